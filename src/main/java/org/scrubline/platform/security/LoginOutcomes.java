package org.scrubline.platform.security;

import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TenantScope;
import org.springframework.context.event.EventListener;
import org.springframework.security.authentication.event.AbstractAuthenticationFailureEvent;
import org.springframework.security.authentication.event.AuthenticationSuccessEvent;
import org.springframework.security.authentication.event.InteractiveAuthenticationSuccessEvent;
import org.springframework.security.core.Authentication;
import org.springframework.security.web.authentication.WebAuthenticationDetails;
import org.springframework.stereotype.Component;

/** Feeds log-in results to the throttle and to the record of log-ins. */
@Component
class LoginOutcomes {

    private final LoginThrottle throttle;
    private final LoginRecord record;
    private final OrganisationEntry organisations;

    LoginOutcomes(LoginThrottle throttle, LoginRecord record, OrganisationEntry organisations) {
        this.throttle = throttle;
        this.record = record;
        this.organisations = organisations;
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
        record.refused(attempt.getName(), false);
    }

    /** A wrong code after a right password; the account's codes are slowed where they are checked. */
    void wrongCode(String username, String address) {
        throttle.failed(LoginThrottle.address(address));
        record.refused(username, false);
    }

    @EventListener
    void succeeded(AuthenticationSuccessEvent event) {
        throttle.succeeded(LoginThrottle.account(event.getAuthentication().getName()));
    }

    /**
     * Comes after the session was renewed, so that the entry carries the session the person works in. After a password that
     * is not enough, and until an organisation is chosen, it says nothing yet.
     */
    @EventListener
    void entered(InteractiveAuthenticationSuccessEvent event) {
        Authentication shown = event.getAuthentication();
        if (shown.getPrincipal() instanceof AccountPrincipal account) {
            OrganisationEntry.Entry entry = organisations.of(account, shown.getAuthorities(), null);
            SignedIn who = entry.who();
            if (who != null && !entry.undecided()) {
                TenantScope.run(who.tenantId(), () -> record.entered(who, shown.getAuthorities()));
            }
        }
    }
}
