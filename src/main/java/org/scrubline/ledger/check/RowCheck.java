package org.scrubline.ledger.check;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.RecordCheck;
import org.scrubline.ledger.leaf.RecordRows;
import tools.jackson.databind.JsonNode;

/** Compares the rows of a record with what its leaf fixed, then with each other. */
final class RowCheck {

    private final Findings findings;
    private final Map<LeafKind, List<RecordCheck>> checks = new EnumMap<>(LeafKind.class);

    RowCheck(Findings findings, Iterable<RecordCheck> checks) {
        this.findings = findings;
        checks.forEach(check -> this.checks
                .computeIfAbsent(check.kind(), kind -> new ArrayList<>())
                .add(check));
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
        // What was changed contradicts itself as a matter of course; the second look is for what was fixed anew.
        if (findings.count() == before && leaf.rows() != null) {
            contradictions(kind, leaf, leaf.rows());
        }
    }

    private void contradictions(LeafKind kind, PreparedLeaf leaf, RecordRows rows) {
        List<RecordCheck> mine = checks.getOrDefault(kind, List.of());
        if (mine.isEmpty()) {
            return;
        }
        Map<String, List<JsonNode>> columns = new TreeMap<>();
        rows.byTable()
                .forEach((table, list) -> columns.put(
                        table, list.stream().map(RecordRows.Row::columns).toList()));
        for (RecordCheck check : mine) {
            check.check(leaf.leaf().record(), columns)
                    .forEach(wrong -> findings.add(
                            Problem.CONTRADICTION,
                            leaf.leaf().kind(),
                            leaf.leaf().record(),
                            wrong.table(),
                            wrong.column()));
        }
    }

    private void add(Problem problem, PreparedLeaf leaf, String table) {
        findings.add(problem, leaf.leaf().kind(), leaf.leaf().record(), table);
    }
}
