package org.scrubline.command;

import static org.scrubline.command.JsonValues.elements;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.scrubline.scoring.Require;
import tools.jackson.databind.JsonNode;

/** The data object of a statistic; whatever is missing or of the wrong kind is refused with a sentence. */
final class StatisticData {
    private final JsonNode node;

    StatisticData(JsonNode node) {
        this.node = node;
    }

    boolean has(String key) {
        return node.hasNonNull(key);
    }

    boolean flag(String key) {
        return node.path(key).asBoolean(false);
    }

    double number(String key) {
        return JsonValues.number("\"" + key + "\"", required(key));
    }

    double number(String key, double otherwise) {
        return has(key) ? number(key) : otherwise;
    }

    int whole(String key) {
        return JsonValues.whole("\"" + key + "\"", required(key));
    }

    int whole(String key, int otherwise) {
        return has(key) ? whole(key) : otherwise;
    }

    /** The confidence of intervals: {@code confidence}, or 1 - {@code alpha}, or .95. */
    double confidence() {
        return has("confidence") ? number("confidence") : 1 - number("alpha", 0.05);
    }

    String text(String key) {
        return JsonValues.label(required(key));
    }

    double[] numbers(String key) {
        return JsonValues.numbers("\"" + key + "\"", required(key));
    }

    /** A list of numbers, or one number taken as a list. */
    double[] oneOrMore(String key) {
        return required(key).isArray() ? numbers(key) : new double[] {number(key)};
    }

    double[] numbersOrNone(String key) {
        return has(key) ? numbers(key) : new double[0];
    }

    /** A list of 0 and 1, or of true and false. */
    boolean[] marks(String key) {
        double[] numbers = numbers(key);
        boolean[] marks = new boolean[numbers.length];
        for (int i = 0; i < marks.length; i++) {
            Require.that(numbers[i] == 0 || numbers[i] == 1, "\"%s\" must hold 0 and 1, not %s.", key, numbers[i]);
            marks[i] = numbers[i] == 1;
        }
        return marks;
    }

    int[] wholes(String key) {
        return elements("\"" + key + "\"", required(key)).stream()
                .mapToInt(element -> JsonValues.whole("Every value in \"" + key + "\"", element))
                .toArray();
    }

    int[] wholesOrNone(String key) {
        return has(key) ? wholes(key) : new int[0];
    }

    List<String> labels(String key) {
        return labels(required(key), key);
    }

    List<String> labels(String key, List<String> otherwise) {
        return has(key) ? labels(key) : otherwise;
    }

    private static List<String> labels(JsonNode list, String key) {
        return elements("\"" + key + "\"", list).stream().map(JsonValues::label).toList();
    }

    List<List<String>> labelRows(String key) {
        return rows(key, row -> labels(row, key));
    }

    double[][] matrix(String key) {
        return rows(key, row -> JsonValues.numbers("a row of \"" + key + "\"", row))
                .toArray(double[][]::new);
    }

    List<double[][]> matrices(String key) {
        return rows(
                key,
                matrix -> elements("an element of \"" + key + "\"", matrix).stream()
                        .map(row -> JsonValues.numbers("a row of \"" + key + "\"", row))
                        .toArray(double[][]::new));
    }

    int[][] wholeRows(String key) {
        return rows(
                        key,
                        row -> elements("a row of \"" + key + "\"", row).stream()
                                .mapToInt(value -> JsonValues.whole("Every value in \"" + key + "\"", value))
                                .toArray())
                .toArray(int[][]::new);
    }

    /** Rows of numbers in which null stands for missing. */
    List<List<@Nullable Double>> rowsWithGaps(String key) {
        return rows(key, row -> {
            List<@Nullable Double> values = new ArrayList<>();
            for (JsonNode value : elements("a row of \"" + key + "\"", row)) {
                values.add(value.isNull() ? null : JsonValues.number("Every value in \"" + key + "\"", value));
            }
            return values;
        });
    }

    /** Whole numbers in which null stands for missing. */
    List<@Nullable Integer> wholesWithGaps(String key) {
        List<@Nullable Integer> values = new ArrayList<>();
        for (JsonNode value : elements("\"" + key + "\"", required(key))) {
            values.add(value.isNull() ? null : JsonValues.whole("Every value in \"" + key + "\"", value));
        }
        return values;
    }

    List<StatisticData> cases(String key) {
        return rows(key, element -> {
            if (!element.isObject()) {
                throw new IllegalArgumentException("Every element of \"" + key + "\" must be an object.");
            }
            return new StatisticData(element);
        });
    }

    /** Rows of raw numbers with their spelling, for keys that quote the input. */
    List<List<JsonNode>> rawRows(String key) {
        return rows(key, row -> elements("an element of \"" + key + "\"", row));
    }

    StatisticData object(String key) {
        JsonNode value = required(key);
        if (!value.isObject()) {
            throw new IllegalArgumentException("\"" + key + "\" must be an object.");
        }
        return new StatisticData(value);
    }

    List<String> keys() {
        return List.copyOf(node.propertyNames());
    }

    Map<String, Integer> wholesByKey() {
        Map<String, Integer> values = new LinkedHashMap<>();
        keys().forEach(key -> values.put(key, whole(key)));
        return values;
    }

    private <T> List<T> rows(String key, Function<JsonNode, T> row) {
        return elements("\"" + key + "\"", required(key)).stream().map(row).toList();
    }

    private JsonNode required(String key) {
        JsonNode value = node.get(key);
        if (value == null || value.isNull()) {
            throw new IllegalArgumentException("The data have no \"" + key + "\".");
        }
        return value;
    }
}
