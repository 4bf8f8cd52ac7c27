package org.scrubline.rubric.format;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tools.jackson.databind.JsonNode;

/** One rubric file, parsed but not yet read: its head and the steps it writes out itself. */
final class RubricFile {

    private final Fields head;
    private final List<JsonNode> entries;
    private final Map<String, JsonNode> written = new LinkedHashMap<>();

    RubricFile(String name, JsonNode root, Faults faults) {
        head = new Fields(name, root, faults);
        entries = head.items("steps");
        for (JsonNode entry : entries) {
            String code = Fields.code(entry);
            if (!code.isEmpty() && written.putIfAbsent(code, entry) != null) {
                Fields.coded(name, "step", entry, faults).wrong("code", "is used twice");
            }
        }
    }

    Fields head() {
        return head;
    }

    String procedure() {
        return head.text("procedure");
    }

    List<JsonNode> entries() {
        return new ArrayList<>(entries);
    }

    /** The step another file takes from here; only steps written out here can be taken. */
    Optional<JsonNode> written(String code, Fields taker) {
        JsonNode step = written.get(code);
        if (step == null) {
            taker.wrong("take", head.where() + " writes out no step " + code);
        }
        return Optional.ofNullable(step);
    }
}
