package org.scrubline.ledger.check;

import java.util.Arrays;
import java.util.HexFormat;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.merkle.Frontier;
import org.scrubline.ledger.note.VerifierKey;

/**
 * The core of the verifier: takes the leaves of one ledger in order and computes everything anew. Pure; it knows no
 * database and no file.
 */
final class LedgerCheck {

    private final UUID tenant;
    private final Known known;
    private final Findings findings = new Findings();
    private final Frontier leaves = new Frontier();
    private final SeenRecords seen = new SeenRecords();
    private final CheckpointCheck checkpoints;
    private final RowCheck rows;
    private final SealCheck seals;
    private long next;
    private long records;

    LedgerCheck(UUID tenant, Known known) {
        this.tenant = tenant;
        this.known = known.about(tenant);
        this.checkpoints = new CheckpointCheck(tenant, this.known, findings);
        this.rows = new RowCheck(findings);
        this.seals = new SealCheck(findings);
    }

    Findings findings() {
        return findings;
    }

    /** The seals of the audit trail among the leaves so far. */
    SealCheck seals() {
        return seals;
    }

    void leaf(PreparedLeaf prepared, Frontier.Completed completed) {
        EvidenceLeaf leaf = prepared.leaf();
        place(leaf);
        if (!prepared.hash().equals(leaf.hash())) {
            findings.add(Problem.LEAF_HASH, leaf.kind(), leaf.index() + 1);
        }
        checkpoints.reached(leaves);
        content(prepared);
        leaves.add(HexFormat.of().parseHex(prepared.hash()), completed);
    }

    private void place(EvidenceLeaf leaf) {
        if (leaf.index() > next) {
            findings.add(Problem.LEAVES_MISSING, "", next + 1, leaf.index());
        } else if (leaf.index() < next) {
            findings.add(Problem.LEAF_OUT_OF_ORDER, "", leaf.index() + 1);
        }
        next = Math.max(next, leaf.index() + 1);
        if (!seen.add(leaf.kind(), leaf.record())) {
            findings.add(Problem.SECOND_LEAF, leaf.kind(), leaf.record(), leaf.index() + 1);
        }
    }

    private void content(PreparedLeaf prepared) {
        EvidenceLeaf leaf = prepared.leaf();
        if (prepared.said() == null || prepared.rows() == null) {
            findings.add(Problem.ENTRY_UNREADABLE, leaf.kind(), leaf.index() + 1);
            return;
        }
        if (!prepared.isAbout(tenant)) {
            findings.add(Problem.ENTRY_ELSEWHERE, leaf.kind(), leaf.index() + 1);
        }
        Optional<LeafKind> kind = kind(leaf.kind());
        if (kind.isEmpty()) {
            findings.add(Problem.UNKNOWN_KIND, "", leaf.index() + 1, leaf.kind());
            return;
        }
        rows.check(kind.get(), prepared, prepared.said().rows());
        switch (kind.get()) {
            case SIGNATURE -> records++;
            case AUDIT_SEAL -> seals.seal(prepared);
            case LEDGER_KEY -> checkpoints.key(prepared.rows());
            case CHECKPOINT -> checkpoints.stored(prepared.rows(), leaves);
            default -> {
                // Nothing beyond its rows.
            }
        }
    }

    static Optional<LeafKind> kind(String name) {
        return Arrays.stream(LeafKind.values())
                .filter(kind -> kind.name().equals(name))
                .findFirst();
    }

    /**
     * What the check came to.
     *
     * @param unsealed entries of the audit trail that wait for their seal
     */
    CheckResult finish(long unsealed) {
        rows.finish();
        checkpoints.reached(leaves);
        checkpoints.finish(leaves.size());
        return new CheckResult(
                tenant,
                leaves.size(),
                records,
                checkpoints.count(),
                Optional.ofNullable(checkpoints.newest())
                        .map(newest -> newest.checkpoint().size())
                        .orElse(0L),
                Optional.ofNullable(checkpoints.newest())
                        .flatMap(newest -> newest.signer(checkpoints.keys()))
                        .map(VerifierKey::text)
                        .orElse(null),
                !known.keys().isEmpty(),
                known.checkpoints().size(),
                unsealed,
                rows.removals(),
                findings.kept(),
                findings.count());
    }
}
