package org.scrubline.platform.security;

import org.springframework.context.event.EventListener;
import org.springframework.security.authentication.event.AbstractAuthenticationFailureEvent;
import org.springframework.security.authentication.event.AuthenticationSuccessEvent;
import org.springframework.security.core.Authentication;
import org.springframework.security.web.authentication.WebAuthenticationDetails;
import org.springframework.stereotype.Component;

/** Feeds log-in results to the throttle. */
@Component
class LoginOutcomes {

    private final LoginThrottle throttle;

    LoginOutcomes(LoginThrottle throttle) {
        this.throttle = throttle;
    }

    @EventListener
    void failed(AbstractAuthenticationFailureEvent event) {
        Authentication attempt = event.getAuthentication();
        if (!attempt.getName().isEmpty()) {
            throttle.failed(LoginThrottle.account(attempt.getName()));
        }
        if (attempt.getDetails() instanceof WebAuthenticationDetails details) {
            throttle.failed(LoginThrottle.address(details.getRemoteAddress()));
        }
    }

    @EventListener
    void succeeded(AuthenticationSuccessEvent event) {
        throttle.succeeded(LoginThrottle.account(event.getAuthentication().getName()));
    }
}
