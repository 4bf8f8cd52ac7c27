package org.scrubline.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import org.scrubline.command.StatisticSamples.Outcome;
import org.scrubline.command.StatisticSamples.Sample;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** Whatever the data, the command answers with numbers, with null and a note, or with one sentence. */
class UnusableDataTests {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    @TempDir
    private Path folder;

    @TestFactory
    List<DynamicTest> everyMethodSurvivesSpoiltData() throws IOException {
        List<DynamicTest> tests = new ArrayList<>();
        StatisticSamples.all()
                .forEach((name, sample) -> spoilt(sample.data())
                        .forEach((how, data) -> tests.add(DynamicTest.dynamicTest(
                                name + ": " + how, () -> assertAnswered(sample.method(), data)))));
        assertThat(tests).hasSizeGreaterThan(1000);
        return tests;
    }

    @Test
    void theSamplesCoverEveryMethod() throws IOException {
        Set<String> covered = new LinkedHashSet<>();
        StatisticSamples.all().values().stream().map(Sample::method).forEach(covered::add);
        assertThat(covered).isEqualTo(StatisticCommand.methods().keySet());
    }

    @TestFactory
    List<DynamicTest> everySampleIsUsableAsItIs() throws IOException {
        return StatisticSamples.all().entrySet().stream()
                .map(entry -> DynamicTest.dynamicTest(entry.getKey(), () -> {
                    Outcome outcome = StatisticSamples.run(
                            entry.getValue().method(), entry.getValue().data(), folder);
                    assertThat(outcome.err()).isEmpty();
                    assertThat(outcome.json().size()).isGreaterThan(1);
                }))
                .toList();
    }

    private void assertAnswered(String method, JsonNode data) throws IOException {
        Outcome outcome = StatisticSamples.run(method, data, folder);
        if (outcome.code() == Commands.FINE) {
            assertThat(outcome.err()).isEmpty();
            boolean undefined = false;
            for (Map.Entry<String, JsonNode> entry : outcome.json().properties()) {
                JsonNode value = entry.getValue();
                undefined |= value.isNull();
                assertThat(value.isNull() || value.isNumber() || entry.getKey().equals("note"))
                        .as("%s = %s", entry.getKey(), value)
                        .isTrue();
            }
            assertThat(!undefined || outcome.json().has("note"))
                    .as("an undefined value comes with a note")
                    .isTrue();
        } else {
            assertThat(outcome.code()).isEqualTo(Commands.WRONG_USE);
            assertThat(outcome.out()).isEmpty();
            assertThat(outcome.err().strip().lines().count()).isEqualTo(1);
            assertThat(outcome.err().strip())
                    .endsWith(".")
                    .matches("(?s)([A-Z\"]|lambda |sigma |alpha |k |x |p0 ).*")
                    .doesNotContain("Exception");
        }
    }

    private static Map<String, JsonNode> spoilt(ObjectNode data) {
        Map<String, JsonNode> variants = new LinkedHashMap<>();
        for (String key : data.propertyNames()) {
            variants.put("without " + key, data.deepCopy().without(List.of(key)));
            JsonNode value = data.get(key);
            for (JsonNode other : List.of(
                    NODES.arrayNode(),
                    NODES.nullNode(),
                    NODES.stringNode("text"),
                    NODES.numberNode(-1),
                    NODES.numberNode(0),
                    NODES.numberNode(1e300),
                    NODES.objectNode())) {
                variants.put(key + " = " + other, with(data, key, other));
            }
            variants.put(key + " all 1", with(data, key, replaced(value, NODES.numberNode(1))));
            variants.put(key + " all 0", with(data, key, replaced(value, NODES.numberNode(0))));
            variants.put(key + " all null", with(data, key, replaced(value, NODES.nullNode())));
            variants.put(key + " all huge", with(data, key, replaced(value, NODES.numberNode(1e200))));
            variants.put(key + " all negative", with(data, key, replaced(value, NODES.numberNode(-0.7))));
            variants.put(key + " all NaN text", with(data, key, replaced(value, NODES.stringNode("NaN"))));
            if (value.isArray() && value.size() > 1) {
                for (int size = 1; size <= 3; size++) {
                    variants.put(key + " first " + size, with(data, key, first((ArrayNode) value, size)));
                }
                variants.put(key + " ragged", with(data, key, ragged((ArrayNode) value)));
                variants.put(key + " one column", with(data, key, oneColumn((ArrayNode) value)));
            }
        }
        return variants;
    }

    private static ObjectNode with(ObjectNode data, String key, JsonNode value) {
        ObjectNode copy = data.deepCopy();
        copy.set(key, value);
        return copy;
    }

    private static JsonNode replaced(JsonNode node, JsonNode leaf) {
        if (node.isArray()) {
            ArrayNode array = NODES.arrayNode();
            node.forEach(element -> array.add(replaced(element, leaf)));
            return array;
        }
        if (node.isObject()) {
            ObjectNode object = NODES.objectNode();
            node.properties().forEach(entry -> object.set(entry.getKey(), replaced(entry.getValue(), leaf)));
            return object;
        }
        return leaf;
    }

    private static ArrayNode first(ArrayNode array, int size) {
        ArrayNode shorter = NODES.arrayNode();
        for (int i = 0; i < Math.min(size, array.size()); i++) {
            shorter.add(array.get(i));
        }
        return shorter;
    }

    private static ArrayNode ragged(ArrayNode array) {
        ArrayNode copy = array.deepCopy();
        JsonNode last = copy.get(copy.size() - 1);
        if (last.isArray()) {
            ((ArrayNode) last).add(1);
        } else {
            copy.add(last);
        }
        return copy;
    }

    private static ArrayNode oneColumn(ArrayNode array) {
        ArrayNode copy = NODES.arrayNode();
        array.forEach(row -> copy.add(row.isArray() ? first((ArrayNode) row, 1) : row));
        return copy;
    }
}
