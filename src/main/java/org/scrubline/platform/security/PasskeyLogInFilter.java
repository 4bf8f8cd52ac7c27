package org.scrubline.platform.security;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.util.Optional;
import org.scrubline.platform.passkey.Challenges;
import org.springframework.http.HttpMethod;
import org.springframework.security.authentication.AuthenticationManager;
import org.springframework.security.core.Authentication;
import org.springframework.security.web.authentication.AbstractAuthenticationProcessingFilter;
import org.springframework.security.web.authentication.SimpleUrlAuthenticationFailureHandler;
import org.springframework.security.web.servlet.util.matcher.PathPatternRequestMatcher;

/** Logs in with a passkey: a form with its answer, and the challenge from the session of the page it stood on. */
class PasskeyLogInFilter extends AbstractAuthenticationProcessingFilter {

    static final String PATH = "/login/passkey";

    PasskeyLogInFilter(AuthenticationManager manager, LogInMarks marks) {
        super(PathPatternRequestMatcher.withDefaults().matcher(HttpMethod.POST, PATH), manager);
        LogInSession.renewedBy(this);
        setAuthenticationSuccessHandler(marks);
        setAuthenticationFailureHandler(new SimpleUrlAuthenticationFailureHandler("/login?passkey"));
    }

    @Override
    public Authentication attemptAuthentication(HttpServletRequest request, HttpServletResponse response) {
        HttpSession session = request.getSession(false);
        byte[] challenge = session == null ? new byte[0] : Challenges.LOG_IN.take(session);
        String answer = Optional.ofNullable(request.getParameter("assertion")).orElse("");
        PasskeyLogIn logIn = new PasskeyLogIn(answer, challenge);
        logIn.setDetails(authenticationDetailsSource.buildDetails(request));
        return getAuthenticationManager().authenticate(logIn);
    }
}
