package org.scrubline.rubric.format;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/** What is wrong with a text: the first fault ends a strict reading, the other kind goes on and keeps them all. */
final class Faults {

    private final @Nullable Lines lines;
    private final Map<String, RubricFault> found = new LinkedHashMap<>();

    private Faults(@Nullable Lines lines) {
        this.lines = lines;
    }

    static Faults strict() {
        return new Faults(null);
    }

    static Faults kept(Lines lines) {
        return new Faults(lines);
    }

    /**
     * @param node where it is
     * @param key the key of it, or empty
     * @throws RubricFormatException in a strict reading
     */
    void add(JsonNode node, String key, String message) {
        if (lines == null) {
            throw new RubricFormatException(message, 0);
        }
        found.putIfAbsent(message, new RubricFault(lines.of(node, key), message));
    }

    boolean any() {
        return !found.isEmpty();
    }

    /** In the order of their lines. */
    List<RubricFault> found() {
        return found.values().stream()
                .sorted(Comparator.comparingInt(RubricFault::line))
                .toList();
    }
}
