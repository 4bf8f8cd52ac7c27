package org.scrubline.ledger;

import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.Assertion;
import org.scrubline.platform.Recognised;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

@Service
class StoredAssertions implements Assertions {

    private final AssertionStore store;
    private final Ledger ledger;
    private final Clock clock;

    StoredAssertions(AssertionStore store, Ledger ledger, Clock clock) {
        this.store = store;
        this.ledger = ledger;
        this.clock = clock;
    }

    @Override
    @Transactional(propagation = Propagation.MANDATORY)
    public void keep(LeafKind kind, UUID record, Recognised how) {
        if (how instanceof Recognised.ByPasskey passkey) {
            UUID id = UUID.randomUUID();
            store.insert(
                    new AssertionStore.Row(id, kind, record, clock.instant().truncatedTo(ChronoUnit.MILLIS)),
                    passkey.assertion());
            ledger.append(LeafKind.ASSERTION, id);
        }
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Assertion> of(LeafKind kind, UUID record) {
        return store.find(kind, record);
    }
}
