package org.scrubline.ledger.check;

import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeSet;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.RecordCheck;

/** Compares the rows of a record with what its leaf fixed, then with each other. */
final class RowCheck {

    private final Findings findings;
    private final AssertionPairs pairs;
    private final Tombstones stones;

    RowCheck(Findings findings) {
        this.findings = findings;
        this.pairs = new AssertionPairs(findings);
        this.stones = new Tombstones(findings);
    }

    void check(LeafKind kind, PreparedLeaf leaf, SortedMap<String, String> fixed) {
        if (leaf.rows() != null && leaf.rows().isEmpty() && !fixed.isEmpty()) {
            stones.gone(leaf, fixed.keySet());
            return;
        }
        Set<String> tables = new TreeSet<>(fixed.keySet());
        tables.addAll(leaf.rowHashes().keySet());
        long before = findings.count();
        for (String table : tables) {
            String was = fixed.get(table);
            String is = leaf.rowHashes().get(table);
            if (is == null) {
                add(Problem.ROWS_GONE, leaf, table);
            } else if (was == null) {
                add(Problem.ROWS_ADDED, leaf, table);
            } else if (!was.equals(is)) {
                add(Problem.ROWS_CHANGED, leaf, table);
            }
        }
        if (kind == LeafKind.ASSERTION) {
            pairs.kept(leaf);
        }
        if (kind == LeafKind.RECORD_REMOVAL && findings.count() == before) {
            stones.stone(leaf);
        }
        // What was changed contradicts itself as a matter of course; the second look is for what was fixed anew.
        second(kind, leaf, findings.count() == before);
    }

    private void second(LeafKind kind, PreparedLeaf leaf, boolean asFixed) {
        for (RecordCheck.Look look : leaf.looks()) {
            if (look.claim() != null) {
                pairs.claimed(kind, leaf.leaf().record(), look.claim());
            }
            if (asFixed) {
                look.contradictions().forEach(wrong -> add(wrong, leaf));
            }
        }
    }

    private void add(RecordCheck.Contradiction wrong, PreparedLeaf leaf) {
        findings.add(Problem.CONTRADICTION, leaf.leaf().kind(), leaf.leaf().record(), wrong.table(), wrong.column());
    }

    /** Reports signatures that waited for their record, and gone rows that waited for a tombstone, in vain. */
    void finish() {
        pairs.finish();
        reportGone();
    }

    /** The second half alone, where one record stands by itself. */
    void reportGone() {
        stones.finish();
    }

    List<Removal> removals() {
        return stones.removals();
    }

    private void add(Problem problem, PreparedLeaf leaf, String table) {
        findings.add(problem, leaf.leaf().kind(), leaf.leaf().record(), table);
    }
}
