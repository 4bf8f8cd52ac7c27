package org.scrubline.platform.security;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.stream.Stream;
import org.scrubline.platform.SignedIn;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.web.servlet.util.matcher.PathPatternRequestMatcher;
import org.springframework.security.web.util.matcher.OrRequestMatcher;
import org.springframework.security.web.util.matcher.RequestMatcher;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Keeps everyone out whose log-in is half done: for the rest of the chain the request is nobody's, so that no page has to
 * think of it. Whoever belongs to several organisations and has chosen none is nobody as well. Whoever has to set up a second
 * factor reaches the pages for that and no other. After twelve hours every session is over.
 */
class EntryFilter extends OncePerRequestFilter {

    static final String SHOW = "/login/code";
    static final String SET_UP = "/account/second-factor";
    static final String CHOOSE = "/login/organisation";

    private static final RequestMatcher SETTING_UP =
            new OrRequestMatcher(Stream.of(SET_UP, SET_UP + "/**", "/account/keys", "/account/keys/**", "/logout")
                    .map(path -> (RequestMatcher)
                            PathPatternRequestMatcher.withDefaults().matcher(path))
                    .toList());

    /** However much it is used, a session ends after this long (NIST SP 800-63B, section 4.2.3: at most 12 hours). */
    private static final Duration LONGEST = Duration.ofHours(12);

    private final EntryRule rule;
    private final Clock clock;

    EntryFilter(EntryRule rule, Clock clock) {
        this.rule = rule;
        this.clock = clock;
    }

    /** An error page would otherwise show the name and the navigation of somebody who is not in. */
    @Override
    protected boolean shouldNotFilterErrorDispatch() {
        return false;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        Authentication entered = SecurityContextHolder.getContext().getAuthentication();
        if (entered != null && entered.getPrincipal() instanceof SignedIn && over(request)) {
            request.getSession().invalidate();
            SecurityContextHolder.setContext(SecurityContextHolder.createEmptyContext());
        } else if (entered != null && entered.getPrincipal() instanceof SignedIn who) {
            missing(who, entered, request)
                    .ifPresent(path -> hide(new SecondStep(who, path, LogInSession.shown(entered)), request));
        }
        chain.doFilter(request, response);
    }

    /** The page this log-in still has to pass. Names of organisations are for whoever showed what the account asks for. */
    private Optional<String> missing(SignedIn who, Authentication entered, HttpServletRequest request) {
        if (MembershipFilter.undecided(request)) {
            return Optional.of(rule.appMissing(who, entered.getAuthorities()) ? SHOW : CHOOSE);
        }
        return switch (rule.of(who, entered.getAuthorities())) {
            case IN -> Optional.empty();
            case SHOW -> Optional.of(SHOW);
            case SET_UP -> SETTING_UP.matches(request) ? Optional.empty() : Optional.of(SET_UP);
        };
    }

    private boolean over(HttpServletRequest request) {
        HttpSession session = request.getSession(false);
        return session != null
                && Instant.ofEpochMilli(session.getCreationTime()).plus(LONGEST).isBefore(clock.instant());
    }

    private static void hide(SecondStep step, HttpServletRequest request) {
        step.on(request);
        SecurityContextHolder.setContext(SecurityContextHolder.createEmptyContext());
    }
}
