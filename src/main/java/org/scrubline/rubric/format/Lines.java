package org.scrubline.rubric.format;

import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import tools.jackson.core.JsonPointer;
import tools.jackson.databind.JsonNode;

/** On which line of a text the keys and entries of what was read from it stand. */
final class Lines {

    private final Map<JsonPointer, Integer> written;
    private final IdentityHashMap<JsonNode, Map<String, Integer>> keys = new IdentityHashMap<>();
    private final IdentityHashMap<JsonNode, Integer> entries = new IdentityHashMap<>();

    /**
     * @param written line of each value by its place
     * @param root what was read
     */
    Lines(Map<JsonPointer, Integer> written, JsonNode root) {
        this.written = written;
        walk(root, JsonPointer.empty());
    }

    private void walk(JsonNode node, JsonPointer place) {
        entries.putIfAbsent(node, line(place));
        if (node.isObject()) {
            Map<String, Integer> lines = new HashMap<>();
            node.properties().forEach(property -> {
                JsonPointer inner = place.appendProperty(property.getKey());
                lines.put(property.getKey(), line(inner));
                walk(property.getValue(), inner);
            });
            keys.put(node, lines);
        }
        int index = 0;
        for (JsonNode element : node.isArray() ? node.values() : List.<JsonNode>of()) {
            walk(element, place.appendIndex(index++));
        }
    }

    private int line(JsonPointer place) {
        return written.getOrDefault(place, 1);
    }

    /** The line of a key, or where there is no such key the first of what should hold it. */
    int of(JsonNode node, String key) {
        Integer line = keys.getOrDefault(node, Map.of()).get(key);
        return line != null ? line : entries.getOrDefault(node, 0);
    }
}
