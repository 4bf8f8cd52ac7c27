package org.scrubline.platform.security;

import jakarta.servlet.http.HttpServletRequest;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.scrubline.platform.AccountMail;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Memberships;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Uses a code up and stores the password chosen with it, in the scope of the owner's organisation. */
@Service
@Transactional
class NewPasswordDesk {

    private final LinkStore links;
    private final AccountStore accounts;
    private final Memberships memberships;
    private final PasswordRule rule;
    private final PasswordEncoder encoder;
    private final Devices devices;
    private final AccountMail mail;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    NewPasswordDesk(
            LinkStore links,
            AccountStore accounts,
            Memberships memberships,
            PasswordRule rule,
            PasswordEncoder encoder,
            Devices devices,
            AccountMail mail,
            ApplicationEventPublisher events,
            Clock clock) {
        this.links = links;
        this.accounts = accounts;
        this.memberships = memberships;
        this.rule = rule;
        this.encoder = encoder;
        this.devices = devices;
        this.mail = mail;
        this.events = events;
        this.clock = clock;
    }

    public Attempt<SignedIn> choose(LinkStore.Owner owner, String hash, String fresh, HttpServletRequest request) {
        Optional<SignedIn> who = memberships.find(owner.account(), owner.tenant());
        if (who.isEmpty()) {
            return unknown();
        }
        Optional<Refusal> weak = rule.check(fresh, names(who.get()));
        if (weak.isPresent()) {
            return Attempt.refused(weak.get());
        }
        Instant now = clock.instant();
        return links.use(hash, now) ? done(who.get(), fresh, now, request) : unknown();
    }

    private Attempt<SignedIn> done(SignedIn who, String fresh, Instant now, HttpServletRequest request) {
        links.end(who.accountId(), now);
        accounts.setPassword(who.accountId(), encoder.encode(fresh));
        devices.passwordChanged(who, request);
        mail.renewed(who.accountId());
        events.publishEvent(new AccountChanged("password-renewed", who));
        return Attempt.done(who);
    }

    private static List<String> names(SignedIn who) {
        return List.of(who.username(), who.printedName(), who.organisationName());
    }

    private static Attempt<SignedIn> unknown() {
        return Attempt.refused(Refusal.at("code", "refusal.link.code"));
    }
}
