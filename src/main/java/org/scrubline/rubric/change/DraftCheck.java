package org.scrubline.rubric.change;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.RubricLibrary;
import org.scrubline.rubric.Rubrics;
import org.scrubline.rubric.Step;
import org.scrubline.rubric.format.RubricFault;
import org.scrubline.rubric.format.RubricReader;
import org.scrubline.rubric.format.RubricReading;
import org.springframework.stereotype.Component;

/** Reads a draft as the format does, and asks what only the organisation's own versions can answer. */
@Component
class DraftCheck {

    private static final String NAME = "draft";
    private static final int LONGEST_VERSION = 20;
    private static final int LONGEST_TITLE = 120;

    private final Rubrics rubrics;
    private final RubricLibrary library;

    DraftCheck(Rubrics rubrics, RubricLibrary library) {
        this.rubrics = rubrics;
        this.library = library;
    }

    RubricReading check(String procedure, String source) {
        RubricReading reading = RubricReader.check(NAME, source);
        Rubric rubric = reading.rubric();
        if (rubric == null) {
            return reading;
        }
        List<RubricFault> faults = new ArrayList<>();
        againstHead(rubrics.current(procedure).rubric(), rubric, source, faults);
        rubric.steps().forEach(step -> againstSources(step, source, faults));
        faults.sort(Comparator.comparingInt(RubricFault::line));
        return faults.isEmpty() ? reading : new RubricReading(null, faults);
    }

    private void againstHead(Rubric inForce, Rubric draft, String source, List<RubricFault> faults) {
        if (!draft.procedure().equals(inForce.procedure())) {
            faults.add(wrong(source, "procedure", "must stay " + inForce.procedure()));
        }
        if (draft.family() != inForce.family()) {
            faults.add(wrong(source, "family", "must stay that of the version in force"));
        }
        if (draft.title().length() > LONGEST_TITLE) {
            faults.add(wrong(source, "title", "is longer than " + LONGEST_TITLE + " characters"));
        }
        if (draft.version().length() > LONGEST_VERSION) {
            faults.add(wrong(source, "version", "is longer than " + LONGEST_VERSION + " characters"));
        }
        boolean taken = rubrics.published().stream()
                .anyMatch(published -> published.rubric().procedure().equals(inForce.procedure())
                        && published.rubric().version().equals(draft.version()));
        if (taken) {
            faults.add(wrong(source, "version", draft.version() + " is published already; give another"));
        }
    }

    private void againstSources(Step step, String source, List<RubricFault> faults) {
        Stream.concat(step.sources().stream(), step.measures().stream().flatMap(measure -> measure.sources().stream()))
                .filter(key -> !library.sources().knows(key))
                .distinct()
                .forEach(key -> faults.add(new RubricFault(
                        line(source, "- code: " + step.code()),
                        NAME + ", step " + step.code() + ", key sources: there is no source " + key)));
    }

    private static RubricFault wrong(String source, String key, String what) {
        return new RubricFault(line(source, key + ":"), NAME + ", key " + key + ": " + what);
    }

    /** The first line that begins like this, blanks aside; 0 when it is written in another way. */
    private static int line(String source, String beginning) {
        List<String> lines = source.lines().map(String::strip).toList();
        for (int i = 0; i < lines.size(); i++) {
            if (lines.get(i).startsWith(beginning)) {
                return i + 1;
            }
        }
        return 0;
    }
}
