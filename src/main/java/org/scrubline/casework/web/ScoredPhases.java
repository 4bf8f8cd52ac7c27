package org.scrubline.casework.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.scrubline.rubric.PhaseSteps;
import org.scrubline.rubric.Rubric;

/** Steps of a rubric by phase, each with the level somebody gave it. */
final class ScoredPhases {

    private ScoredPhases() {}

    /** A phase with how many of its steps have an answer, and whether it is shown open. */
    record PhaseOfSteps(String code, int done, boolean open, List<StepLevel> steps) {}

    /** One step; {@code level} is null while it has no answer and 0 for one that is no level, {@code sentences} holds five. */
    record StepLevel(
            String code,
            String name,
            boolean critical,
            @Nullable Integer level,
            List<String> sentences) {}

    /** The phases of a rubric; the first is open, or all of them. */
    static List<PhaseOfSteps> of(Rubric rubric, Map<String, Integer> levels, boolean allOpen) {
        List<PhaseOfSteps> phases = new ArrayList<>();
        for (PhaseSteps phase : rubric.phases()) {
            phases.add(phase(phase, levels, allOpen || phases.isEmpty()));
        }
        return phases;
    }

    private static PhaseOfSteps phase(PhaseSteps phase, Map<String, Integer> levels, boolean open) {
        List<StepLevel> steps = phase.steps().stream()
                .map(step -> new StepLevel(
                        step.code(), step.name(), step.critical(), levels.get(step.code()), step.levels()))
                .toList();
        int done = (int) steps.stream().filter(step -> step.level() != null).count();
        return new PhaseOfSteps(phase.phase().name(), done, open, steps);
    }
}
