package org.scrubline.platform.security;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.AccountMail;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.MailAddress;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SecretCode;
import org.scrubline.platform.SignedIn;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Where a person reads mail about the account. An address serves once a code sent there was entered: a slip of the finger
 * must not give a stranger the way in.
 */
@Service
@Transactional
public class AddressOnFile {

    private static final int CODES = 5;
    private static final Duration HOUR = Duration.ofHours(1);

    private final AddressStore store;
    private final AccountStore accounts;
    private final LinkStore links;
    private final Allowances allowances;
    private final AccountMail mail;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    AddressOnFile(
            AddressStore store,
            AccountStore accounts,
            LinkStore links,
            Allowances allowances,
            AccountMail mail,
            ApplicationEventPublisher events,
            Clock clock) {
        this.store = store;
        this.accounts = accounts;
        this.links = links;
        this.allowances = allowances;
        this.mail = mail;
        this.events = events;
        this.clock = clock;
    }

    public boolean isOffered() {
        return mail.isSet();
    }

    @Transactional(readOnly = true)
    public Optional<String> serving(UUID account) {
        return store.of(account, true);
    }

    @Transactional(readOnly = true)
    public Optional<String> waiting(UUID account) {
        return store.of(account, false);
    }

    /** Takes an address down and has a code sent there; the one that serves goes on serving until it is entered. */
    public Attempt<String> ask(SignedIn who, String typed) {
        String address = FreeText.tidy(typed);
        if (!MailAddress.fits(address)) {
            return Attempt.refused(Refusal.at("address", "refusal.address.form"));
        }
        if (accounts.byId(who.accountId()).orElseThrow().shared()) {
            return Attempt.refused(Refusal.at("address", "refusal.address.shared"));
        }
        if (allowances.take("address:" + who.accountId(), CODES, HOUR).isPresent()) {
            return Attempt.refused(Refusal.at("address", "refusal.address.wait"));
        }
        store.await(who.accountId(), address, clock.instant());
        mail.confirm(who.accountId());
        return Attempt.done(address);
    }

    public Attempt<UUID> confirm(SignedIn who, String code) {
        Instant now = clock.instant();
        if (!store.confirm(who.accountId(), SecretCode.hash(code), now)) {
            return Attempt.refused(Refusal.at("code", "refusal.address.code"));
        }
        links.end(who.accountId(), now);
        events.publishEvent(new AccountChanged("address-confirmed", who));
        return Attempt.done(who.accountId());
    }

    public void remove(SignedIn who) {
        if (store.remove(who.accountId())) {
            links.end(who.accountId(), clock.instant());
            events.publishEvent(new AccountChanged("address-removed", who));
        }
    }
}
