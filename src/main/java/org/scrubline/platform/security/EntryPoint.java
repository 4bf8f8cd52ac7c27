package org.scrubline.platform.security;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.web.authentication.LoginUrlAuthenticationEntryPoint;

/** Leads whoever is not in to the log-in, or to the step of it that is missing. */
class EntryPoint extends LoginUrlAuthenticationEntryPoint {

    EntryPoint() {
        super("/login");
    }

    @Override
    protected String determineUrlToUseForThisRequest(
            HttpServletRequest request, HttpServletResponse response, AuthenticationException exception) {
        return SecondStep.of(request).map(SecondStep::path).orElseGet(this::getLoginFormUrl);
    }
}
