package org.scrubline.rubric.format;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.scrubline.rubric.Family;
import org.scrubline.rubric.Measure;
import org.scrubline.rubric.Phase;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Step;
import tools.jackson.databind.JsonNode;

/** Reads a set of rubric files that may take steps and measures from one another. */
public final class RubricReader {

    private final Map<String, RubricFile> files = new LinkedHashMap<>();
    private final Faults faults;

    /**
     * @param texts file content by file name
     * @throws RubricFormatException when a file is not YAML, has no head or names a procedure twice
     */
    public RubricReader(Map<String, String> texts) {
        this(Faults.strict());
        texts.forEach((name, text) -> add(name, YamlText.parse(name, text)));
    }

    private RubricReader(Faults faults) {
        this.faults = faults;
    }

    /**
     * Reads one text that stands alone, to its end whatever is wrong with it.
     *
     * @param name what the faults call it
     */
    public static RubricReading check(String name, String text) {
        JsonNode root;
        try {
            root = YamlText.parse(name, text);
        } catch (RubricFormatException e) {
            return new RubricReading(null, List.of(new RubricFault(e.line(), String.valueOf(e.getMessage()))));
        }
        Faults faults = Faults.kept(YamlText.lines(text, root));
        RubricReader reader = new RubricReader(faults);
        reader.add(name, root);
        Rubric rubric = reader.read().stream().findFirst().orElse(null);
        return new RubricReading(rubric, faults.found());
    }

    private void add(String name, JsonNode root) {
        RubricFile file = new RubricFile(name, root, faults);
        if (files.putIfAbsent(file.procedure(), file) != null) {
            file.head().wrong("procedure", file.procedure() + " has another file already");
        }
    }

    /**
     * The rubrics in the order of the files.
     *
     * @throws RubricFormatException at the first thing the format does not allow
     */
    public List<Rubric> read() {
        return files.values().stream().flatMap(file -> rubric(file).stream()).toList();
    }

    private Optional<Rubric> rubric(RubricFile file) {
        Fields head = file.head();
        List<Step> steps = new ArrayList<>();
        for (JsonNode entry : file.entries()) {
            steps.addAll(entry(head.where(), entry));
        }
        refuseCodesUsedTwice(head, steps);
        String version = head.text("version");
        String title = head.text("title");
        Family family = head.choice("family", Family.class);
        String procedure = file.procedure();
        head.done();
        return faults.any() ? Optional.empty() : Optional.of(new Rubric(procedure, version, title, family, steps));
    }

    private void refuseCodesUsedTwice(Fields head, List<Step> steps) {
        Set<String> codes = new HashSet<>();
        for (Step step : steps) {
            if (!step.code().isEmpty() && !codes.add(step.code())) {
                head.twice(step.code());
            }
        }
    }

    private List<Step> entry(String file, JsonNode entry) {
        if (!entry.has("take")) {
            return List.of(step(file, entry, false));
        }
        Fields fields = new Fields(file + ", steps", entry, faults);
        boolean onlyWhenConverted = fields.flag("onlyWhenConverted");
        List<Step> taken = taken(fields).stream()
                .map(written -> step(file, written, onlyWhenConverted))
                .toList();
        fields.done();
        return taken;
    }

    private List<JsonNode> taken(Fields fields) {
        String from = fields.text("from");
        RubricFile source = files.get(from);
        if (source == null) {
            fields.wrong("from", "there is no procedure " + from);
            fields.texts("take");
            return List.of();
        }
        return fields.texts("take").stream()
                .flatMap(code -> source.written(code, fields).stream())
                .toList();
    }

    private Step step(String file, JsonNode node, boolean takenForConversion) {
        Fields fields = Fields.coded(file, "step", node, faults);
        String code = fields.code();
        Step step = new Step(
                code,
                fields.text("name"),
                fields.choice("phase", Phase.class),
                fields.flag("critical"),
                fields.text("sees"),
                measures(code, fields),
                levels(fields),
                fields.texts("hazards"),
                fields.texts("coaching"),
                fields.has("sources") ? fields.texts("sources") : List.of(),
                fields.flag("onlyWhenConverted") || takenForConversion);
        fields.done();
        return step;
    }

    private static List<String> levels(Fields step) {
        Fields fields = step.inner("levels");
        List<String> levels = new ArrayList<>();
        for (int level = 1; level <= Step.LEVELS; level++) {
            levels.add(fields.text(Integer.toString(level)));
        }
        fields.done();
        return levels;
    }

    private List<Measure> measures(String code, Fields step) {
        if (!step.has("measures")) {
            return List.of();
        }
        List<Measure> measures = new ArrayList<>();
        for (JsonNode item : step.items("measures")) {
            written(step, item).forEach(node -> measures.add(MeasureReader.read(code, step.where(), node, faults)));
        }
        Set<String> codes = new HashSet<>();
        for (Measure measure : measures) {
            if (!codes.add(measure.code())) {
                step.wrong("measures", measure.code() + " is used twice");
            }
        }
        return measures;
    }

    /** The item itself, or the measures it takes; what is taken must be written out where it is taken from. */
    private List<JsonNode> written(Fields step, JsonNode item) {
        if (!item.has("take")) {
            return List.of(item);
        }
        Fields fields = new Fields(step.where() + ", measures", item, faults);
        List<JsonNode> measures = new ArrayList<>();
        for (JsonNode source : taken(fields)) {
            measures.addAll(new Fields(fields.where(), source, faults).items("measures"));
        }
        fields.done();
        return measures;
    }
}
