package org.scrubline.command;

import java.util.ArrayList;
import java.util.List;
import tools.jackson.databind.JsonNode;

/** Reads single values and lists of JSON; whatever is of the wrong kind is refused with a sentence that names it. */
final class JsonValues {
    private JsonValues() {}

    static List<JsonNode> elements(String name, JsonNode list) {
        if (!list.isArray()) {
            throw new IllegalArgumentException(
                    Character.toUpperCase(name.charAt(0)) + name.substring(1) + " must be a list.");
        }
        List<JsonNode> elements = new ArrayList<>(list.size());
        list.forEach(elements::add);
        return elements;
    }

    static double[] numbers(String name, JsonNode list) {
        return elements(name, list).stream()
                .mapToDouble(value -> number("Every value in " + name, value))
                .toArray();
    }

    static double number(String name, JsonNode value) {
        double number = Double.NaN;
        if (value.isBoolean()) {
            number = value.booleanValue() ? 1 : 0;
        } else if (value.isNumber() || value.isString()) {
            number = parsed(value.asString());
        }
        if (!Double.isFinite(number)) {
            throw new IllegalArgumentException(name + " must be a number, but is " + value + ".");
        }
        return number;
    }

    private static double parsed(String text) {
        try {
            return Double.parseDouble(text);
        } catch (NumberFormatException notANumber) {
            return Double.NaN;
        }
    }

    static int whole(String name, JsonNode value) {
        double number = number(name, value);
        if (number != Math.rint(number) || Math.abs(number) > Integer.MAX_VALUE) {
            throw new IllegalArgumentException(name + " must be a whole number, but is " + value + ".");
        }
        return (int) number;
    }

    static String label(JsonNode value) {
        if (value.isNull() || value.isContainer()) {
            throw new IllegalArgumentException("A name or category is missing.");
        }
        return value.asString();
    }
}
