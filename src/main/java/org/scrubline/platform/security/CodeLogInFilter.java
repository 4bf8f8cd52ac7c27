package org.scrubline.platform.security;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
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
        SignedIn who = SecondStep.of(request)
                .filter(step -> step.path().equals(EntryFilter.SHOW))
                .map(SecondStep::who)
                .orElseThrow(() -> new InsufficientAuthenticationException("no password before the code"));
        String code = Optional.ofNullable(request.getParameter("code")).orElse("");
        return factors.check(who, code).fold(shown -> LogInSession.entered(who, List.of(EntryRule.CODE)), reasons -> {
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
