package org.scrubline.casework.web;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Wording;
import org.scrubline.rubric.PhaseSteps;
import org.scrubline.rubric.Rubric;

/**
 * The steps of a case for the trainee's own levels.
 *
 * @param caseHref the case
 * @param caseTitle reference and procedure
 * @param locked whether a supervisor has signed, so that it may only be read
 */
record SelfScorePage(
        String caseHref, String caseTitle, boolean locked, List<Wording.FormError> errors, List<PhaseOfSteps> phases) {

    /** A phase with how many of its steps have a level. */
    record PhaseOfSteps(String code, int done, List<StepLevel> steps) {}

    /** One step; {@code level} is null while it has none, {@code sentences} holds five. */
    record StepLevel(
            String code,
            String name,
            boolean critical,
            @Nullable Integer level,
            List<String> sentences) {}

    static SelfScorePage of(
            String caseHref,
            String caseTitle,
            boolean locked,
            List<Wording.FormError> errors,
            Rubric rubric,
            Map<String, Integer> levels) {
        return new SelfScorePage(
                caseHref,
                caseTitle,
                locked,
                errors,
                rubric.phases().stream().map(phase -> phase(phase, levels)).toList());
    }

    private static PhaseOfSteps phase(PhaseSteps phase, Map<String, Integer> levels) {
        List<StepLevel> steps = phase.steps().stream()
                .map(step -> new StepLevel(
                        step.code(), step.name(), step.critical(), levels.get(step.code()), step.levels()))
                .toList();
        int done = (int) steps.stream().filter(step -> step.level() != null).count();
        return new PhaseOfSteps(phase.phase().name(), done, steps);
    }
}
