package org.scrubline.ledger.leaf;

import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.scrubline.platform.CanonicalJson;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * The canonical text (RFC 8785) of a row. Nearly every row is text, whole numbers and truth values, for which a short
 * way does; whatever else a row holds goes through the library, which gives the same text several times slower.
 */
final class CanonicalRow {

    /** Largest whole number that ECMAScript writes as it is, 2^53. */
    private static final long EXACT = 1L << 53;

    private CanonicalRow() {}

    static String of(ObjectNode row) {
        return quickly(row).orElseGet(() -> CanonicalJson.canonical(row.toString()));
    }

    private static Optional<String> quickly(ObjectNode row) {
        Map<String, JsonNode> sorted = new TreeMap<>();
        row.properties().forEach(column -> sorted.put(column.getKey(), column.getValue()));
        StringBuilder text = new StringBuilder(256).append('{');
        for (Map.Entry<String, JsonNode> column : sorted.entrySet()) {
            if (text.length() > 1) {
                text.append(',');
            }
            if (!quote(column.getKey(), text) || !value(column.getValue(), text.append(':'))) {
                return Optional.empty();
            }
        }
        return Optional.of(text.append('}').toString());
    }

    /** False for a value that needs the library. */
    private static boolean value(JsonNode value, StringBuilder text) {
        if (value.isString()) {
            return quote(value.asString(), text);
        }
        if (value.isBoolean()) {
            text.append(value.asBoolean());
            return true;
        }
        boolean whole = value.isIntegralNumber() && value.canConvertToLong() && Math.abs(value.asLong()) <= EXACT;
        if (whole) {
            text.append(value.asLong());
        }
        return whole;
    }

    /** RFC 8785 section 3.2.2.2; false for characters beyond the basic plane, which are left to the library. */
    private static boolean quote(String value, StringBuilder text) {
        text.append('"');
        for (int at = 0; at < value.length(); at++) {
            char c = value.charAt(at);
            if (Character.isSurrogate(c)) {
                return false;
            }
            if (c == '"' || c == '\\') {
                text.append('\\').append(c);
            } else if (c < ' ') {
                control(c, text);
            } else {
                text.append(c);
            }
        }
        text.append('"');
        return true;
    }

    private static void control(char c, StringBuilder text) {
        switch (c) {
            case '\b' -> text.append("\\b");
            case '\t' -> text.append("\\t");
            case '\n' -> text.append("\\n");
            case '\f' -> text.append("\\f");
            case '\r' -> text.append("\\r");
            default -> text.append(String.format("\\u%04x", (int) c));
        }
    }
}
