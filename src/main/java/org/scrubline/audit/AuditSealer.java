package org.scrubline.audit;

import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.OptionalLong;
import java.util.UUID;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.ledger.RowsHash;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Seals the entries since the last seal, in two transactions. The first finds a number below which nothing can appear any
 * more: it looks at a moment when nobody is writing, so that no number drawn before waits for its commit. The second holds
 * the ledger and seals up to that number.
 */
@Service
class AuditSealer {

    private final AuditSealStore store;
    private final Ledger ledger;
    private final Clock clock;

    AuditSealer(AuditSealStore store, Ledger ledger, Clock clock) {
        this.store = store;
        this.ledger = ledger;
        this.clock = clock;
    }

    /** The newest number that is settled; empty while somebody is writing. */
    @Transactional
    public OptionalLong settled() {
        return store.nobodyWrites() ? OptionalLong.of(store.last()) : OptionalLong.empty();
    }

    /** Two at once cannot both seal: the second one's row begins where the first one's did, which the key refuses. */
    @Transactional
    public void seal(long last) {
        long after = store.sealed();
        if (last <= after) {
            return;
        }
        RowsHash hash = store.hash(after, last);
        AuditSeal seal = new AuditSeal(
                UUID.randomUUID(),
                after,
                last,
                hash.count(),
                hash.hex(),
                clock.instant().truncatedTo(ChronoUnit.MILLIS));
        store.insert(seal);
        ledger.append(LeafKind.AUDIT_SEAL, seal.id());
    }
}
