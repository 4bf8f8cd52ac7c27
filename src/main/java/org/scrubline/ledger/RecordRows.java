package org.scrubline.ledger;

import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.scrubline.platform.CanonicalJson;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/**
 * The rows of a record by table, each as a JSON object of all its columns. Columns without a value are left out, so that
 * a column added by a later version of the program changes no hash of the rows before it.
 */
record RecordRows(SortedMap<String, List<String>> byTable) {

    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    static RecordRows of(Map<String, List<String>> byTable) {
        SortedMap<String, List<String>> canonical = new TreeMap<>();
        byTable.forEach((table, rows) -> {
            if (!rows.isEmpty()) {
                canonical.put(
                        table, rows.stream().map(RecordRows::canonical).sorted().toList());
            }
        });
        return new RecordRows(canonical);
    }

    /** SHA-256 by table of the canonical JSON array of its rows in the order of their canonical text, hexadecimal. */
    SortedMap<String, String> hashes() {
        SortedMap<String, String> hashes = new TreeMap<>();
        byTable.forEach((table, rows) -> hashes.put(table, CanonicalJson.sha256("[" + String.join(",", rows) + "]")));
        return hashes;
    }

    private static String canonical(String row) {
        ObjectNode object = (ObjectNode) MAPPER.readTree(row);
        List<String> without = object.propertyStream()
                .filter(property -> property.getValue().isNull())
                .map(Map.Entry<String, JsonNode>::getKey)
                .toList();
        object.remove(without);
        return CanonicalJson.canonical(object.toString());
    }
}
