package org.scrubline.rubric.format;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.scrubline.rubric.ComplexityFactor;
import org.scrubline.rubric.ComplexityFactors;
import org.scrubline.rubric.EventCatalogue;
import org.scrubline.rubric.EventKind;
import org.scrubline.rubric.Sources;
import tools.jackson.databind.JsonNode;

/** Reads the lists beside the rubrics: events, complexity factors and sources. */
public final class CodeListReader {

    private CodeListReader() {}

    /**
     * The events a sheet can record.
     *
     * @throws RubricFormatException when the format does not allow the text
     */
    public static EventCatalogue events(String file, String text) {
        return new EventCatalogue(entries(
                file,
                text,
                "events",
                fields -> new EventKind(
                        fields.text("code"),
                        fields.text("name"),
                        fields.flag("blocking"),
                        fields.flag("needsReason"))));
    }

    /**
     * The complexity factors.
     *
     * @throws RubricFormatException when the format does not allow the text
     */
    public static ComplexityFactors complexity(String file, String text) {
        return new ComplexityFactors(entries(
                file,
                text,
                "factors",
                fields -> new ComplexityFactor(
                        fields.text("code"),
                        fields.text("name"),
                        fields.points("technical"),
                        fields.points("healing"),
                        fields.flag("stakes"),
                        fields.texts("sources"))));
    }

    /**
     * What the source keys stand for.
     *
     * @throws RubricFormatException when the format does not allow the text
     */
    public static Sources sources(String file, String text) {
        JsonNode root = YamlText.parse(file, text);
        Fields fields = new Fields(file, root, Faults.strict());
        Map<String, String> citations = new LinkedHashMap<>();
        root.propertyNames().forEach(key -> citations.put(key, fields.text(key)));
        return new Sources(citations);
    }

    private static <T> List<T> entries(String file, String text, String key, Function<Fields, T> reading) {
        Fields root = new Fields(file, YamlText.parse(file, text), Faults.strict());
        Set<String> codes = new HashSet<>();
        List<T> entries = root.items(key).stream()
                .map(node -> entry(file + ", " + key, node, codes, reading))
                .toList();
        root.done();
        return entries;
    }

    private static <T> T entry(String where, JsonNode node, Set<String> codes, Function<Fields, T> reading) {
        Fields fields = Fields.coded(where, "entry", node, Faults.strict());
        if (!codes.add(fields.text("code"))) {
            fields.wrong("code", "is used twice");
        }
        T entry = reading.apply(fields);
        fields.done();
        return entry;
    }
}
