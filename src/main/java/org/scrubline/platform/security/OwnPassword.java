package org.scrubline.platform.security;

import jakarta.servlet.http.HttpServletRequest;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.Accounts;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** A person changes their own password. Nobody changes anybody else's. */
@Service
@Transactional
public class OwnPassword {

    private final Accounts accounts;
    private final PasswordRule rule;
    private final AccountStore store;
    private final PasswordEncoder encoder;
    private final LinkStore links;
    private final Devices devices;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    OwnPassword(
            Accounts accounts,
            PasswordRule rule,
            AccountStore store,
            PasswordEncoder encoder,
            LinkStore links,
            Devices devices,
            ApplicationEventPublisher events,
            Clock clock) {
        this.accounts = accounts;
        this.rule = rule;
        this.store = store;
        this.encoder = encoder;
        this.links = links;
        this.devices = devices;
        this.events = events;
        this.clock = clock;
    }

    /**
     * Puts a new password in place of the current one; the fields of a refusal are {@code current} and {@code password}.
     * A wrong current one counts like a wrong log-in.
     */
    public Attempt<UUID> change(SignedIn who, String current, String fresh, HttpServletRequest request) {
        Optional<Refusal> weak = rule.check(fresh, List.of(who.username(), who.printedName(), who.organisationName()));
        if (weak.isPresent()) {
            return Attempt.refused(weak.get());
        }
        return accounts.confirmPassword(who.accountId(), current)
                .fold(
                        account -> {
                            store.setPassword(account, encoder.encode(fresh));
                            links.end(account, clock.instant());
                            devices.passwordChanged(who, request);
                            events.publishEvent(new AccountChanged("password-changed", who));
                            return Attempt.done(account);
                        },
                        reasons -> Attempt.refused(reasons.stream()
                                .map(reason -> new Refusal("current", reason.messageKey(), reason.arguments()))
                                .toList()));
    }
}
