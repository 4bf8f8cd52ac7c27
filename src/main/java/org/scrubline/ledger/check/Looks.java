package org.scrubline.ledger.check;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.RecordCheck;
import org.scrubline.ledger.RecordCheck.Contradiction;
import org.scrubline.ledger.RecordCheck.Look;
import org.scrubline.ledger.leaf.RecordRows;
import tools.jackson.databind.JsonNode;

/** What the rooms' own checks see in a record. */
final class Looks {

    /** Looks at nothing. */
    static final Looks NONE = new Looks(List.of());

    private final Map<LeafKind, List<RecordCheck>> checks = new EnumMap<>(LeafKind.class);

    Looks(Iterable<RecordCheck> checks) {
        for (RecordCheck check : checks) {
            check.kinds()
                    .forEach(kind -> this.checks
                            .computeIfAbsent(kind, none -> new ArrayList<>())
                            .add(check));
        }
    }

    List<Look> at(EvidenceLeaf leaf, RecordRows rows) {
        List<RecordCheck> mine = LedgerCheck.kind(leaf.kind()).map(checks::get).orElse(null);
        if (mine == null) {
            return List.of();
        }
        Map<String, List<JsonNode>> columns = new TreeMap<>();
        rows.byTable()
                .forEach((table, list) -> columns.put(
                        table, list.stream().map(RecordRows.Row::columns).toList()));
        return mine.stream().map(check -> look(check, leaf, columns)).toList();
    }

    /** Text that is not even of the right form agrees with nothing. */
    private static Look look(RecordCheck check, EvidenceLeaf leaf, Map<String, List<JsonNode>> columns) {
        LeafKind kind = LeafKind.valueOf(leaf.kind());
        try {
            return check.look(kind, leaf.record(), columns);
        } catch (RuntimeException unreadable) {
            return new Look(List.of(new Contradiction(kind.rows().get(0).table(), "content")), null);
        }
    }
}
