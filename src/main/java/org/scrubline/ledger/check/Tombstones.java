package org.scrubline.ledger.check;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.scrubline.ledger.LeafKind;
import tools.jackson.databind.JsonNode;

/**
 * Tells rows that are gone by rule from rows that are missing. A tombstone stands in the ledger behind what it is about,
 * so whatever is gone waits for one; what waits in vain is reported.
 */
final class Tombstones {

    private static final String STONE = LeafKind.RECORD_REMOVAL.rows().get(0).table();
    private static final String LIST = LeafKind.RECORD_REMOVAL.rows().get(1).table();

    private final Findings findings;
    private final Map<Gone, Set<String>> waiting = new LinkedHashMap<>();
    private final List<Removal> removals = new ArrayList<>();

    Tombstones(Findings findings) {
        this.findings = findings;
    }

    private record Gone(String kind, String record) {}

    /** A record none of whose rows is left. */
    void gone(PreparedLeaf leaf, Set<String> tables) {
        waiting.put(new Gone(leaf.leaf().kind(), leaf.leaf().record().toString()), tables);
    }

    /** A leaf about a removal, when its rows are those that were recorded. */
    void stone(PreparedLeaf leaf) {
        if (leaf.rows() == null) {
            return;
        }
        leaf.rows()
                .rows(LIST)
                .forEach(row -> waiting.remove(new Gone(
                        row.columns().path("kind").asString(""),
                        row.columns().path("record_id").asString(""))));
        leaf.rows().rows(STONE).forEach(row -> removals.add(removal(row.columns())));
    }

    private static Removal removal(JsonNode row) {
        return new Removal(
                row.path("removed_at").asString(""),
                row.path("asked_name").asString(""),
                row.path("removed_name").asString(""),
                row.path("records").asLong());
    }

    /** Everything that is gone without a tombstone. */
    void finish() {
        waiting.forEach((gone, tables) ->
                tables.forEach(table -> findings.add(Problem.ROWS_GONE, gone.kind(), gone.record(), table)));
    }

    List<Removal> removals() {
        return removals;
    }
}
