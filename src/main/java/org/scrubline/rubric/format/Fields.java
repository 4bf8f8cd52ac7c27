package org.scrubline.rubric.format;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/** The keys of one mapping in a file. Every reading checks the value; {@link #done} refuses keys nobody read. */
final class Fields {

    private final String where;
    private final JsonNode node;
    private final Set<String> read = new HashSet<>();

    Fields(String where, JsonNode node) {
        this.where = where;
        this.node = node;
        if (!node.isObject()) {
            throw new RubricFormatException(where + ": expected keys with values, found " + node);
        }
    }

    /** The keys of an entry with a code; messages then say where it is by that code. */
    static Fields coded(String where, String label, JsonNode node) {
        String code = new Fields(where + ", " + label, node).text("code");
        return new Fields(where + ", " + label + " " + code, node);
    }

    String where() {
        return where;
    }

    boolean has(String key) {
        return node.has(key);
    }

    JsonNode node(String key) {
        read.add(key);
        JsonNode value = node.get(key);
        if (value == null || value.isNull()) {
            throw wrong(key, "is missing");
        }
        return value;
    }

    String text(String key) {
        return text(key, node(key));
    }

    String text(String key, String fallback) {
        return has(key) ? text(key) : fallback;
    }

    private String text(String key, JsonNode value) {
        if (!value.isString() || value.stringValue().isBlank()) {
            throw wrong(key, "must be text, found " + value);
        }
        return value.stringValue().strip();
    }

    boolean flag(String key) {
        if (!has(key)) {
            return false;
        }
        JsonNode value = node(key);
        if (!value.isBoolean()) {
            throw wrong(key, "must be true or false, found " + value);
        }
        return value.booleanValue();
    }

    @Nullable
    BigDecimal decimal(String key) {
        if (!has(key)) {
            return null;
        }
        JsonNode value = node(key);
        if (!value.isNumber()) {
            throw wrong(key, "must be a number, found " + value);
        }
        return value.decimalValue();
    }

    int points(String key) {
        JsonNode value = node(key);
        if (!value.isIntegralNumber() || value.intValue() < 0) {
            throw wrong(key, "must be a whole number of 0 or more, found " + value);
        }
        return value.intValue();
    }

    <E extends Enum<E>> E choice(String key, Class<E> type) {
        String word = text(key);
        return Arrays.stream(type.getEnumConstants())
                .filter(constant -> word(constant).equals(word))
                .findFirst()
                .orElseThrow(() -> wrong(key, "\"" + word + "\" is not one of " + words(type)));
    }

    private static String words(Class<? extends Enum<?>> type) {
        return Arrays.stream(type.getEnumConstants()).map(Fields::word).collect(Collectors.joining(", "));
    }

    private static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    List<String> texts(String key) {
        return items(key).stream().map(item -> text(key, item)).toList();
    }

    /** The non-empty list under a key. */
    List<JsonNode> items(String key) {
        JsonNode list = node(key);
        if (!list.isArray() || list.isEmpty()) {
            throw wrong(key, "must be a list with at least one entry");
        }
        return new ArrayList<>(list.values());
    }

    void done() {
        for (String key : node.propertyNames()) {
            if (!read.contains(key)) {
                throw wrong(key, "is not known here");
            }
        }
    }

    RubricFormatException wrong(String key, String what) {
        return new RubricFormatException(where + ", key " + key + ": " + what);
    }
}
