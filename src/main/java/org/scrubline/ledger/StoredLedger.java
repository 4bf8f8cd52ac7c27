package org.scrubline.ledger;

import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.ledger.leaf.LeafEntry;
import org.scrubline.ledger.leaf.RecordRows;
import org.scrubline.ledger.merkle.MerkleHash;
import org.scrubline.platform.TenantScope;
import org.springframework.stereotype.Service;
import org.springframework.transaction.IllegalTransactionStateException;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** Appends in the caller's transaction, one leaf at a time per organisation. */
@Service
class StoredLedger implements Ledger {

    private final LedgerStore store;
    private final Clock clock;

    StoredLedger(LedgerStore store, Clock clock) {
        this.store = store;
        this.clock = clock;
    }

    /** {@link IllegalTransactionStateException} is the state exception of a caller without a transaction. */
    @Override
    @Transactional(propagation = Propagation.MANDATORY)
    public LeafReceipt append(LeafKind kind, UUID record) {
        RecordRows rows = store.rows(kind, record);
        if (rows.isEmpty()) {
            throw new IllegalStateException("no row of " + kind + " " + record + " to fix");
        }
        store.lock();
        long index = store.size();
        LeafEntry entry = new LeafEntry(
                LeafEntry.SCHEMA,
                TenantScope.require(),
                kind.name(),
                record,
                clock.instant().truncatedTo(ChronoUnit.MILLIS),
                rows.hashes());
        String json = entry.json();
        byte[] hash = MerkleHash.leaf(json);
        store.addLeaf(index, entry, json, hash);
        complete(index, hash);
        return new LeafReceipt(index, json);
    }

    /** Adds the subtrees this leaf completes: while its position is a right child, its parent is complete. */
    private void complete(long index, byte[] leaf) {
        byte[] hash = leaf;
        long position = index;
        for (int level = 0; position % 2 == 1; level++) {
            hash = MerkleHash.node(store.hash(level, position - 1), hash);
            position /= 2;
            store.addNode(level + 1, position, hash);
        }
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<LeafReceipt> find(LeafKind kind, UUID record) {
        return store.find(kind, record);
    }
}
