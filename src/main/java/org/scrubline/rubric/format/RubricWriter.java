package org.scrubline.rubric.format;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.scrubline.rubric.Measure;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Sources;
import org.scrubline.rubric.Step;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.dataformat.yaml.YAMLMapper;
import tools.jackson.dataformat.yaml.YAMLWriteFeature;

/** Writes a rubric in the file format, every step written out, so that {@link RubricReader} reads the same rubric again. */
public final class RubricWriter {

    private static final YAMLMapper MAPPER = YAMLMapper.builder()
            .disable(YAMLWriteFeature.WRITE_DOC_START_MARKER, YAMLWriteFeature.SPLIT_LINES)
            .enable(
                    YAMLWriteFeature.MINIMIZE_QUOTES,
                    YAMLWriteFeature.ALWAYS_QUOTE_NUMBERS_AS_STRINGS,
                    YAMLWriteFeature.INDENT_ARRAYS_WITH_INDICATOR)
            .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
            .build();

    private RubricWriter() {}

    public static String write(Rubric rubric) {
        Map<String, Object> file = new LinkedHashMap<>();
        file.put("procedure", rubric.procedure());
        file.put("version", rubric.version());
        file.put("title", rubric.title());
        file.put("family", Fields.word(rubric.family()));
        file.put("steps", rubric.steps().stream().map(RubricWriter::step).toList());
        return MAPPER.writeValueAsString(file);
    }

    private static Map<String, Object> step(Step step) {
        Map<String, Object> keys = new LinkedHashMap<>();
        keys.put("code", step.code());
        keys.put("name", step.name());
        keys.put("phase", Fields.word(step.phase()));
        if (step.critical()) {
            keys.put("critical", true);
        }
        if (step.onlyWhenConverted()) {
            keys.put("onlyWhenConverted", true);
        }
        keys.put("sees", step.sees());
        if (!step.measures().isEmpty()) {
            keys.put(
                    "measures",
                    step.measures().stream()
                            .map(measure -> measure(step.code(), measure))
                            .toList());
        }
        keys.put("levels", levels(step));
        keys.put("hazards", step.hazards());
        keys.put("coaching", step.coaching());
        if (!step.sources().isEmpty()) {
            keys.put("sources", step.sources());
        }
        return keys;
    }

    private static Map<Integer, String> levels(Step step) {
        Map<Integer, String> levels = new LinkedHashMap<>();
        for (int level = 1; level <= Step.LEVELS; level++) {
            levels.put(level, step.sentence(level));
        }
        return levels;
    }

    private static Map<String, Object> measure(String stepCode, Measure measure) {
        Map<String, Object> keys = new LinkedHashMap<>();
        keys.put("code", measure.code().substring(stepCode.length() + 1));
        keys.put("name", measure.name());
        keys.put("kind", Fields.word(measure.kind()));
        if (!measure.unit().isEmpty()) {
            keys.put("unit", measure.unit());
        }
        keys.put("target", measure.target());
        if (measure.acceptFrom() != null || measure.acceptTo() != null) {
            keys.put("accept", band(measure));
        }
        if (!measure.accepted().equals(measure.target())) {
            keys.put("accepted", measure.accepted());
        }
        if (measure.stepSize() != null) {
            keys.put("stepSize", measure.stepSize());
        }
        if (!measure.sources().equals(List.of(Sources.COMMON_PRACTICE))) {
            keys.put("sources", measure.sources());
        }
        return keys;
    }

    private static Map<String, Object> band(Measure measure) {
        Map<String, Object> band = new LinkedHashMap<>();
        if (measure.acceptFrom() != null) {
            band.put("from", measure.acceptFrom());
        }
        if (measure.acceptTo() != null) {
            band.put("to", measure.acceptTo());
        }
        return band;
    }
}
