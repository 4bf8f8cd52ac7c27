package org.scrubline.ledger.leaf;

import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.scrubline.platform.CanonicalJson;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/**
 * The rows of a record by table, each as a JSON object of all its columns. Columns without a value are left out, so that
 * a column added by a later version of the program changes no hash of the rows before it.
 *
 * @param byTable tables with at least one row; their rows in the order of their canonical text
 */
public record RecordRows(SortedMap<String, List<Row>> byTable) {

    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    /** One row: its canonical text (RFC 8785), and the same to read from. */
    public record Row(String text, JsonNode columns) implements Comparable<Row> {
        @Override
        public int compareTo(Row other) {
            return text.compareTo(other.text);
        }
    }

    public static RecordRows of(Map<String, List<String>> byTable) {
        SortedMap<String, List<Row>> canonical = new TreeMap<>();
        byTable.forEach((table, rows) -> {
            if (!rows.isEmpty()) {
                canonical.put(table, rows.stream().map(RecordRows::row).sorted().toList());
            }
        });
        return new RecordRows(canonical);
    }

    public boolean isEmpty() {
        return byTable.isEmpty();
    }

    /** The rows of a table, none when it has none. */
    public List<Row> rows(String table) {
        return byTable.getOrDefault(table, List.of());
    }

    /** SHA-256 by table of the canonical JSON array of its rows in the order of their canonical text, hexadecimal. */
    public SortedMap<String, String> hashes() {
        SortedMap<String, String> hashes = new TreeMap<>();
        byTable.keySet().forEach(table -> hashes.put(table, CanonicalJson.sha256(json(table))));
        return hashes;
    }

    /** The canonical JSON array of a table's rows. */
    public String json(String table) {
        return rows(table).stream().map(Row::text).collect(Collectors.joining(",", "[", "]"));
    }

    /** One row, JSON as the database writes it; columns without a value are left out. */
    public static Row row(String json) {
        ObjectNode object = (ObjectNode) MAPPER.readTree(json);
        List<String> without = object.propertyStream()
                .filter(property -> property.getValue().isNull())
                .map(Map.Entry<String, JsonNode>::getKey)
                .toList();
        object.remove(without);
        return new Row(CanonicalRow.of(object), object);
    }
}
