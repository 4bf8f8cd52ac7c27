package org.scrubline.rubric;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Optional;

/**
 * One version of the step list of one procedure.
 *
 * @param procedure code of the procedure, one of {@link Procedures}
 * @param version such as {@code 1.0}
 * @param title name of the procedure as shown
 * @param family the family the procedure belongs to
 * @param steps in the order of the operation; codes are unique
 */
public record Rubric(String procedure, String version, String title, Family family, List<Step> steps) {

    public Rubric {
        steps = List.copyOf(steps);
        if (steps.stream().map(Step::code).distinct().count() != steps.size()) {
            throw new IllegalArgumentException("A step code is used twice in " + procedure + " " + version);
        }
    }

    /**
     * The step with this code.
     *
     * @throws NoSuchElementException when the rubric has no such step
     */
    public Step step(String code) {
        return find(code)
                .orElseThrow(() -> new NoSuchElementException("No step " + code + " in " + procedure + " " + version));
    }

    /** The step with this code, empty when the rubric has none. */
    public Optional<Step> find(String code) {
        return steps.stream().filter(step -> step.code().equals(code)).findFirst();
    }

    /** The phases in the order in which the operation first reaches them, each with its steps. */
    public List<PhaseSteps> phases() {
        Map<Phase, List<Step>> byPhase = new LinkedHashMap<>();
        for (Step step : steps) {
            byPhase.computeIfAbsent(step.phase(), phase -> new ArrayList<>()).add(step);
        }
        return byPhase.entrySet().stream()
                .map(entry -> new PhaseSteps(entry.getKey(), entry.getValue()))
                .toList();
    }

    /** The steps the verdict rests on, in order. */
    public List<Step> criticalSteps() {
        return steps.stream().filter(Step::critical).toList();
    }
}
