package org.scrubline.ledger.check;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.scrubline.ledger.leaf.RecordRows;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** A leaf as one JSON object, in evidence files and receipts (docs/evidence-format.md). */
final class LeafJson {

    static final JsonMapper MAPPER = JsonMapper.builder().build();

    private LeafJson() {}

    /** The members of a leaf; rows are put in by {@link #rows}. */
    static ObjectNode members(EvidenceLeaf leaf) {
        ObjectNode object = JsonNodeFactory.instance.objectNode();
        object.put("index", leaf.index());
        object.put("kind", leaf.kind());
        object.put("record", leaf.record().toString());
        object.put("entry", leaf.entry());
        object.put("hash", leaf.hash());
        object.set("rows", rows(RecordRows.of(leaf.rows())));
        return object;
    }

    private static ObjectNode rows(RecordRows rows) {
        ObjectNode object = JsonNodeFactory.instance.objectNode();
        rows.byTable().forEach((table, list) -> {
            var array = object.putArray(table);
            list.forEach(row -> array.add(row.columns()));
        });
        return object;
    }

    /** Reads them back; throws some {@link RuntimeException} when a member is missing or of another form. */
    static EvidenceLeaf read(JsonNode object) {
        Map<String, List<String>> rows = new HashMap<>();
        object.required("rows").properties().forEach(table -> {
            List<String> list = new ArrayList<>();
            table.getValue().forEach(row -> list.add(row.toString()));
            rows.put(table.getKey(), list);
        });
        return new EvidenceLeaf(
                object.required("index").asLong(),
                object.required("kind").asString(),
                UUID.fromString(object.required("record").asString()),
                object.required("entry").asString(),
                object.required("hash").asString(),
                rows);
    }
}
