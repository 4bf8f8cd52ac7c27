package org.scrubline.ledger.check;

import java.util.Set;
import java.util.SortedMap;
import java.util.TreeSet;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.RecordCheck;

/** Compares the rows of a record with what its leaf fixed, then with each other. */
final class RowCheck {

    private final Findings findings;
    private final AssertionPairs pairs;

    RowCheck(Findings findings) {
        this.findings = findings;
        this.pairs = new AssertionPairs(findings);
    }

    void check(LeafKind kind, PreparedLeaf leaf, SortedMap<String, String> fixed) {
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

    /** Reports signatures that waited for their record in vain. */
    void finish() {
        pairs.finish();
    }

    private void add(Problem problem, PreparedLeaf leaf, String table) {
        findings.add(problem, leaf.leaf().kind(), leaf.leaf().record(), table);
    }
}
