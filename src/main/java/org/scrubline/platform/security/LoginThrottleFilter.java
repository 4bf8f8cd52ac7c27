package org.scrubline.platform.security;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.Duration;
import java.util.Optional;
import org.springframework.http.HttpMethod;
import org.springframework.security.web.servlet.util.matcher.PathPatternRequestMatcher;
import org.springframework.security.web.util.matcher.OrRequestMatcher;
import org.springframework.security.web.util.matcher.RequestMatcher;
import org.springframework.web.filter.OncePerRequestFilter;

/** Answers 429 before a password, passkey or code is even looked at while its account or address has to wait. */
class LoginThrottleFilter extends OncePerRequestFilter {

    private static final RequestMatcher LOG_IN = new OrRequestMatcher(
            PathPatternRequestMatcher.withDefaults().matcher(HttpMethod.POST, "/login"),
            PathPatternRequestMatcher.withDefaults().matcher(HttpMethod.POST, PasskeyLogInFilter.PATH),
            PathPatternRequestMatcher.withDefaults().matcher(HttpMethod.POST, EntryFilter.SHOW));

    private final LoginThrottle throttle;
    private final LoginRecord record;

    LoginThrottleFilter(LoginThrottle throttle, LoginRecord record) {
        this.throttle = throttle;
        this.record = record;
    }

    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        return !LOG_IN.matches(request);
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        String username = Optional.ofNullable(request.getParameter("username")).orElse("");
        Optional<Duration> wait = throttle.blockedFor(LoginThrottle.account(username))
                .or(() -> throttle.blockedFor(LoginThrottle.address(request.getRemoteAddr())));
        if (wait.isPresent()) {
            record.refused(username, true);
            response.setHeader("Retry-After", String.valueOf(wait.get().toSeconds() + 1));
            response.sendError(429);
            return;
        }
        chain.doFilter(request, response);
    }
}
