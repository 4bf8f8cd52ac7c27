package org.scrubline.platform.security;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Optional;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.factor.SecondFactors;
import org.springframework.http.HttpMethod;
import org.springframework.security.authentication.BadCredentialsException;
import org.springframework.security.authentication.InsufficientAuthenticationException;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.web.authentication.AbstractAuthenticationProcessingFilter;
import org.springframework.security.web.servlet.util.matcher.PathPatternRequestMatcher;

/** The second page of a log-in: a code beside the password that was right. */
class CodeLogInFilter extends AbstractAuthenticationProcessingFilter {

    private final SecondFactors factors;
    private final LoginOutcomes outcomes;

    CodeLogInFilter(SecondFactors factors, LoginOutcomes outcomes, LogInMarks marks) {
        super(PathPatternRequestMatcher.withDefaults().matcher(HttpMethod.POST, EntryFilter.SHOW));
        this.factors = factors;
        this.outcomes = outcomes;
        LogInSession.renewedBy(this);
        setAuthenticationSuccessHandler(marks);
        setAuthenticationFailureHandler((request, response, refused) -> response.sendRedirect(page(refused)));
    }

    @Override
    public Authentication attemptAuthentication(HttpServletRequest request, HttpServletResponse response) {
        SecondStep step = SecondStep.of(request)
                .filter(one -> one.path().equals(EntryFilter.SHOW))
                .orElseThrow(() -> new InsufficientAuthenticationException("nothing shown before the code"));
        SignedIn who = step.who();
        String code = Optional.ofNullable(request.getParameter("code")).orElse("");
        return factors.check(who, code).fold(shown -> LogInSession.withCode(who, step.shown()), reasons -> {
            outcomes.wrongCode(who.username(), request.getRemoteAddr());
            throw new BadCredentialsException(reasons.get(0).messageKey());
        });
    }

    private static String page(AuthenticationException refused) {
        if (refused instanceof InsufficientAuthenticationException) {
            return "/login";
        }
        return EntryFilter.SHOW + ("refusal.code.wait".equals(refused.getMessage()) ? "?wait" : "?wrong");
    }
}
