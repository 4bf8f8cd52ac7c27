package org.scrubline.ledger;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.ledger.merkle.MerkleTree;
import org.scrubline.ledger.note.Checkpoint;
import org.scrubline.ledger.note.SignedCheckpoint;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Publishes with the ledger locked, so that a checkpoint covers exactly the leaves before its own. */
@Service
@Transactional(readOnly = true)
class CheckpointDesk {

    private final CheckpointStore store;
    private final LedgerStore leaves;
    private final Ledger ledger;
    private final LedgerIdentity identity;
    private final Clock clock;

    CheckpointDesk(CheckpointStore store, LedgerStore leaves, Ledger ledger, LedgerIdentity identity, Clock clock) {
        this.store = store;
        this.leaves = leaves;
        this.ledger = ledger;
        this.identity = identity;
        this.clock = clock;
    }

    @Transactional
    public Optional<IssuedCheckpoint> publish() {
        leaves.lock();
        Optional<IssuedCheckpoint> newest = store.newest();
        long covered = newest.map(issued -> issued.size() + 1).orElse(0L);
        return leaves.size() == covered && signedWithTheKeyOfNow(newest) ? newest : Optional.of(issue());
    }

    /** After a change of the key the offices need a checkpoint of the new one, even if nothing else happened. */
    private boolean signedWithTheKeyOfNow(Optional<IssuedCheckpoint> newest) {
        return newest.isEmpty() || store.keys().contains(identity.verifierKey());
    }

    private IssuedCheckpoint issue() {
        Instant now = clock.instant().truncatedTo(ChronoUnit.MILLIS);
        recordKey(now);
        long size = leaves.size();
        Checkpoint checkpoint = Checkpoint.of(identity.origin(), size, new MerkleTree(leaves::hash).root(size));
        SignedCheckpoint signed = identity.key().sign(checkpoint, identity.origin());
        IssuedCheckpoint issued = new IssuedCheckpoint(size, now, signed.note());
        UUID id = UUID.randomUUID();
        store.add(id, checkpoint, issued);
        ledger.append(LeafKind.CHECKPOINT, id);
        return issued;
    }

    /** The public key stands in the ledger before the first checkpoint it signs. */
    private void recordKey(Instant now) {
        String key = identity.verifierKey();
        if (!store.keys().contains(key)) {
            UUID id = UUID.randomUUID();
            store.addKey(id, key, now);
            ledger.append(LeafKind.LEDGER_KEY, id);
        }
    }

    public Optional<IssuedCheckpoint> newest() {
        return store.newest();
    }

    public String verifierKey() {
        return identity.verifierKey();
    }

    public long size() {
        return leaves.size();
    }
}
