package org.scrubline.rubric.format;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.FreeText;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.MissingNode;

/**
 * The keys of one mapping in a file. Every reading checks the value; {@link #done} refuses keys nobody read. Where faults
 * are kept, a reading that found one answers with an empty value, and nothing is made of what was read.
 */
final class Fields {

    private static final int LONGEST_TEXT = 1000;
    private static final int DIGITS = 9;
    private static final int SHOWN = 60;
    private static final Pattern CODE = Pattern.compile("[A-Z][A-Z0-9_-]{0,19}");

    private final String where;
    private final JsonNode node;
    private final Faults faults;
    private final Set<String> read = new HashSet<>();

    Fields(String where, JsonNode node, Faults faults) {
        this.where = where;
        this.node = node;
        this.faults = faults;
        if (!node.isObject() && !node.isMissingNode()) {
            faults.add(node, "", where + ": expected keys with values, found " + shown(node));
        }
    }

    /** The keys of an entry with a code; messages then say where it is by that code. */
    static Fields coded(String where, String label, JsonNode node, Faults faults) {
        String code = code(node);
        return new Fields(where + ", " + label + (code.isEmpty() ? "" : " " + code), node, faults);
    }

    /** The code of an entry, empty when it has none that is text. */
    static String code(JsonNode entry) {
        JsonNode code = entry.get("code");
        return code != null && code.isString() ? code.stringValue().strip() : "";
    }

    /** What stands under one of these keys, itself a mapping. */
    Fields inner(String key) {
        return new Fields(where + ", " + key, node(key), faults);
    }

    String where() {
        return where;
    }

    boolean has(String key) {
        return node.has(key);
    }

    private JsonNode node(String key) {
        read.add(key);
        JsonNode value = node.get(key);
        if (value == null || value.isNull()) {
            wrong(key, "is missing");
            return MissingNode.getInstance();
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
        if (value.isMissingNode()) {
            return "";
        }
        if (!value.isString() || value.stringValue().isBlank()) {
            wrong(key, "must be text, found " + shown(value));
            return "";
        }
        String text = value.stringValue().strip();
        if (FreeText.hasForbiddenCharacter(text)) {
            wrong(key, "holds a character that cannot be shown");
        } else if (text.length() > LONGEST_TEXT) {
            wrong(key, "is longer than " + LONGEST_TEXT + " characters");
        }
        return text;
    }

    /** A key of records: capital letters, digits, hyphens and underscores. */
    String code() {
        String code = text("code");
        if (!code.isEmpty() && !CODE.matcher(code).matches()) {
            wrong("code", "must begin with a capital letter and hold at most 20 capital letters, digits, - and _");
        }
        return code;
    }

    boolean flag(String key) {
        if (!has(key)) {
            return false;
        }
        JsonNode value = node(key);
        if (!value.isBoolean()) {
            wrong(key, "must be true or false, found " + shown(value));
            return false;
        }
        return value.booleanValue();
    }

    @Nullable
    BigDecimal decimal(String key) {
        if (!has(key)) {
            return null;
        }
        JsonNode value = node(key);
        BigDecimal number = value.isNumber() ? value.decimalValueOpt().orElse(null) : null;
        if (number == null) {
            wrong(key, "must be a number, found " + shown(value));
            return null;
        }
        if (number.scale() > DIGITS || (long) number.precision() - number.scale() > DIGITS) {
            wrong(key, "must have at most " + DIGITS + " digits on either side of the point");
            return null;
        }
        return number;
    }

    int points(String key) {
        JsonNode value = node(key);
        if (!value.isIntegralNumber() || value.intValue() < 0) {
            wrong(key, "must be a whole number of 0 or more, found " + shown(value));
            return 0;
        }
        return value.intValue();
    }

    <E extends Enum<E>> E choice(String key, Class<E> type) {
        String word = text(key);
        return Arrays.stream(type.getEnumConstants())
                .filter(constant -> word(constant).equals(word))
                .findFirst()
                .orElseGet(() -> {
                    if (!word.isEmpty()) {
                        wrong(key, "\"" + word + "\" is not one of " + words(type));
                    }
                    return type.getEnumConstants()[0];
                });
    }

    private static String words(Class<? extends Enum<?>> type) {
        return Arrays.stream(type.getEnumConstants()).map(Fields::word).collect(Collectors.joining(", "));
    }

    /** A constant as files write it. */
    static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    List<String> texts(String key) {
        return items(key).stream().map(item -> text(key, item)).toList();
    }

    /** The non-empty list under a key. */
    List<JsonNode> items(String key) {
        JsonNode list = node(key);
        if (list.isMissingNode()) {
            return List.of();
        }
        if (!list.isArray() || list.isEmpty()) {
            wrong(key, "must be a list with at least one entry");
            return List.of();
        }
        return new ArrayList<>(list.values());
    }

    void done() {
        for (String key : node.propertyNames()) {
            if (!read.contains(key)) {
                wrong(key, "is not known here");
            }
        }
    }

    /** Something here that is no mapping is a fault by itself; its keys are none. */
    void wrong(String key, String what) {
        if (node.isObject()) {
            faults.add(node, key, where + ", key " + key + ": " + what);
        }
    }

    /** A step code of this file that stands for two steps. */
    void twice(String code) {
        faults.add(node, "steps", where + ", step " + code + ", key code: is used twice");
    }

    private static String shown(JsonNode value) {
        String text = value.toString();
        return text.length() <= SHOWN ? text : text.substring(0, SHOWN) + "…";
    }
}
