package org.scrubline.cohort;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.scrubline.casework.reference.ScoredReference;
import org.scrubline.people.Programme;
import org.scrubline.rubric.Step;
import org.scrubline.scoring.reliability.SameWork;

/**
 * Closed reference cases and how alike they were scored; scorers by the id of the person, steps by code.
 *
 * @param programmes all programmes the reader may read this of, by name
 */
public record ReferenceReport(
        Programme programme, List<Programme> programmes, List<ScoredReference> scored, SameWork same) {

    public ReferenceReport {
        programmes = List.copyOf(programmes);
        scored = List.copyOf(scored);
    }

    /** Everyone who scored one of them, name by id, in the order of names. */
    public Map<String, String> scorers() {
        Map<String, String> byName = new TreeMap<>();
        scored.stream()
                .flatMap(one -> one.scorings().stream())
                .forEach(scoring -> byName.put(scoring.name() + " " + scoring.scorerId(), scoring.name()));
        Map<String, String> names = new LinkedHashMap<>();
        byName.forEach((key, name) -> names.put(key.substring(name.length() + 1), name));
        return names;
    }

    /** Names of the steps by code, in the order of their rubrics, as the newest case calls them. */
    public Map<String, String> steps() {
        Map<String, String> names = new LinkedHashMap<>();
        scored.stream()
                .flatMap(one -> one.rubric().steps().stream())
                .forEach((Step step) -> names.put(step.code(), step.name()));
        return names;
    }
}
