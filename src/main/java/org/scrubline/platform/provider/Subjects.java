package org.scrubline.platform.provider;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.SignedIn;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Connects accounts with whom providers vouch for. The key is issuer and subject, never a mail address, which is given to
 * the next person (decision 0025).
 */
@Service
@Transactional
public class Subjects {

    private final SubjectStore store;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Subjects(SubjectStore store, ApplicationEventPublisher events, Clock clock) {
        this.store = store;
        this.events = events;
        this.clock = clock;
    }

    @Transactional(readOnly = true)
    public Optional<UUID> account(ProviderIdentity shown) {
        return store.account(shown);
    }

    @Transactional(readOnly = true)
    public Optional<Instant> linkedAt(Connection connection, UUID account) {
        return store.linkedAt(connection.issuer(), account);
    }

    /** Connects an account with whoever its owner is there; false when either has a partner already. */
    public boolean link(SignedIn owner, Connection connection, ProviderIdentity shown) {
        boolean linked = store.insert(shown, owner.accountId(), clock.instant().truncatedTo(ChronoUnit.MICROS));
        if (linked) {
            events.publishEvent(new SubjectChanged("provider-linked", owner, connection.label()));
        }
        return linked;
    }

    /** Takes the connection away; without one nothing happens. */
    public void unlink(SignedIn owner, Connection connection) {
        if (store.delete(connection.issuer(), owner.accountId())) {
            events.publishEvent(new SubjectChanged("provider-unlinked", owner, connection.label()));
        }
    }
}
