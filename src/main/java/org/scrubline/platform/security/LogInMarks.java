package org.scrubline.platform.security;

import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.Clock;
import org.scrubline.platform.Device;
import org.springframework.http.HttpHeaders;
import org.springframework.security.core.Authentication;
import org.springframework.security.web.authentication.SavedRequestAwareAuthenticationSuccessHandler;
import org.springframework.stereotype.Component;

/** Ends every kind of log-in: marks the session with it, then leads to the page that was asked for. */
@Component
class LogInMarks extends SavedRequestAwareAuthenticationSuccessHandler {

    private final OrganisationEntry organisations;
    private final Clock clock;

    LogInMarks(OrganisationEntry organisations, Clock clock) {
        this.organisations = organisations;
        this.clock = clock;
    }

    @Override
    public void onAuthenticationSuccess(
            HttpServletRequest request, HttpServletResponse response, Authentication authentication)
            throws ServletException, IOException {
        String device = Device.of(request.getHeader(HttpHeaders.USER_AGENT)).text();
        LogInMark mark = new LogInMark(device, request.getRemoteAddr(), clock.instant());
        request.getSession().setAttribute(LogInMark.ATTRIBUTE, mark);
        if (authentication.getPrincipal() instanceof AccountPrincipal account) {
            organisations.begin(account, authentication.getAuthorities(), request.getSession());
        }
        super.onAuthenticationSuccess(request, response, authentication);
    }
}
