package org.scrubline.ledger;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import org.scrubline.ledger.check.ReceiptFile;
import org.scrubline.ledger.leaf.RecordRows;
import org.scrubline.ledger.merkle.MerkleTree;
import org.scrubline.ledger.note.SignedCheckpoint;
import org.scrubline.ledger.note.VerifierKey;
import org.scrubline.platform.NotFound;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional
class StoredReceipts implements Receipts {

    private final LedgerStore leaves;
    private final CheckpointStore store;
    private final Checkpoints checkpoints;

    StoredReceipts(LedgerStore leaves, CheckpointStore store, Checkpoints checkpoints) {
        this.leaves = leaves;
        this.store = store;
        this.checkpoints = checkpoints;
    }

    @Override
    public Receipt of(LeafKind kind, UUID record) {
        LeafReceipt leaf = leaves.find(kind, record).orElseThrow(NotFound::new);
        IssuedCheckpoint covering = store.newest()
                .filter(newest -> newest.size() > leaf.index())
                .or(checkpoints::publish)
                .orElseThrow();
        SignedCheckpoint signed = SignedCheckpoint.parse(covering.note());
        List<VerifierKey> keys = store.keys().stream().map(VerifierKey::parse).toList();
        String key = signed.signer(keys).orElseThrow().text();
        String json = ReceiptFile.write(
                leaf.index(),
                leaf.entry(),
                rows(kind, record),
                new MerkleTree(leaves::hash).inclusion(leaf.index(), covering.size()),
                signed,
                key);
        return new Receipt(leaf.index(), covering, key, json);
    }

    private Map<String, List<String>> rows(LeafKind kind, UUID record) {
        Map<String, List<String>> rows = new TreeMap<>();
        leaves.rows(kind, record)
                .byTable()
                .forEach((table, list) ->
                        rows.put(table, list.stream().map(RecordRows.Row::text).toList()));
        return rows;
    }
}
