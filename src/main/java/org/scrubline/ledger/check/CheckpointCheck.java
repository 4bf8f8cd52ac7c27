package org.scrubline.ledger.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.leaf.RecordRows;
import org.scrubline.ledger.merkle.Frontier;
import org.scrubline.ledger.note.SignedCheckpoint;
import org.scrubline.ledger.note.SignedCheckpoint.Standing;
import org.scrubline.ledger.note.VerifierKey;
import tools.jackson.databind.JsonNode;

/**
 * Compares checkpoints with the leaves. A stored one has its leaf right behind those it covers, so it is compared when
 * that leaf is reached; one held outside, when its size is.
 */
final class CheckpointCheck {

    private static final String KIND = LeafKind.CHECKPOINT.name();

    private final UUID tenant;
    private final Known known;
    private final Findings findings;
    private final Set<VerifierKey> keys;
    private final List<SignedCheckpoint> waiting;
    private @Nullable SignedCheckpoint newest;
    private long count;
    /** The largest size at which the leaves still are what a checkpoint says. */
    private long agreed;

    CheckpointCheck(UUID tenant, Known known, Findings findings) {
        this.tenant = tenant;
        this.known = known;
        this.findings = findings;
        this.keys = new LinkedHashSet<>(known.keys());
        this.waiting = new ArrayList<>(known.checkpoints());
        waiting.sort(Comparator.comparingLong(held -> held.checkpoint().size()));
    }

    /** The rows of a leaf about a key. */
    void key(RecordRows rows) {
        rows.rows("ledger_key").forEach(row -> {
            String text = row.columns().path("verifier_key").asString("");
            try {
                keys.add(VerifierKey.parse(text));
            } catch (IllegalArgumentException noKey) {
                findings.add(Problem.KEY_TEXT, LeafKind.LEDGER_KEY.name(), text);
            }
        });
    }

    /** The rows of a leaf about a checkpoint, when all leaves before it were added. */
    void stored(RecordRows rows, Frontier before) {
        rows.rows("ledger_checkpoint").forEach(row -> stored(row.columns(), before));
    }

    private void stored(JsonNode columns, Frontier before) {
        long size = columns.path("size").asLong(-1);
        SignedCheckpoint read = read(columns);
        if (read == null || read.checkpoint().size() != before.size()) {
            findings.add(Problem.CHECKPOINT_TEXT, KIND, size);
            return;
        }
        newest = read;
        count++;
        Standing standing = read.standing(keys);
        if (standing == Standing.BROKEN) {
            findings.add(Problem.CHECKPOINT_SIGNATURE, KIND, size);
        } else if (standing == Standing.UNKNOWN) {
            findings.add(Problem.CHECKPOINT_KEY, KIND, size);
        }
        compare(Problem.CHECKPOINT_ROOT, read, before);
    }

    /** Null unless the note is a checkpoint of this ledger and says what the columns say. */
    private @Nullable SignedCheckpoint read(JsonNode columns) {
        try {
            SignedCheckpoint read = SignedCheckpoint.parse(columns.path("note").asString(""));
            boolean agrees = read.checkpoint().size() == columns.path("size").asLong(-1)
                    && read.checkpoint().root().equals(columns.path("root").asString(""))
                    && Known.belongs(read.checkpoint().origin(), tenant);
            return agrees ? read : null;
        } catch (IllegalArgumentException noCheckpoint) {
            return null;
        }
    }

    /** Compares the checkpoints held outside that end here. */
    void reached(Frontier leaves) {
        while (!waiting.isEmpty() && waiting.get(0).checkpoint().size() == leaves.size()) {
            compare(Problem.HELD_ROOT, waiting.remove(0), leaves);
        }
    }

    private void compare(Problem problem, SignedCheckpoint checkpoint, Frontier leaves) {
        long size = leaves.size();
        if (checkpoint.checkpoint().hasRoot(leaves.root())) {
            agreed = size;
        } else {
            findings.add(problem, KIND, size, Math.min(agreed + 1, size), size);
        }
    }

    void finish(long leaves) {
        waiting.forEach(held ->
                findings.add(Problem.HELD_LONGER, KIND, held.checkpoint().size(), leaves, leaves + 1));
        known.checkpoints().stream()
                .filter(held -> held.standing(keys) != Standing.SIGNED)
                .forEach(held -> findings.add(
                        Problem.HELD_SIGNATURE, KIND, held.checkpoint().size()));
        if (newest != null && !known.keys().isEmpty() && newest.standing(known.keys()) != Standing.SIGNED) {
            findings.add(Problem.NEWEST_KEY, KIND, newest.checkpoint().size(), signedWith(newest));
        }
    }

    private String signedWith(SignedCheckpoint checkpoint) {
        return checkpoint
                .signer(keys)
                .map(VerifierKey::text)
                .orElseGet(() -> checkpoint.signatures().get(0).name());
    }

    long count() {
        return count;
    }

    @Nullable
    SignedCheckpoint newest() {
        return newest;
    }

    /** Every key known, from outside or from the leaves so far. */
    Set<VerifierKey> keys() {
        return keys;
    }
}
