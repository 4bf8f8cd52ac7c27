package org.scrubline.demo.plan;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.scrubline.demo.plan.DemoCast.Supervisor;
import org.scrubline.demo.plan.DemoCast.Wording;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Step;

/** Words the feedback of a sheet as its scorer would: about steps, never about a person. */
record Words(String strength, String nextStep) {

    private static final Words NONE = new Words("", "");
    private static final List<String> PRAISE =
            List.of("Good case.", "Nice calm work throughout.", "Well done.", "Steady hands, good flow.");
    private static final List<String> ADVICE = List.of("", "", "Carry on like this.", "More of the same.");
    private static final double SPEAKS = .25;

    static Words of(Rubric rubric, Map<String, Integer> levels, Supervisor scorer, Draws draws) {
        boolean speaks = scorer.wording() != Wording.SPARSE || draws.chance(SPEAKS);
        if (levels.isEmpty() || !speaks) {
            return NONE;
        }
        return scorer.wording() == Wording.SHORT
                ? new Words(draws.pick(PRAISE), draws.pick(ADVICE))
                : aboutSteps(rubric, levels, scorer.wording() == Wording.RICH);
    }

    private static Words aboutSteps(Rubric rubric, Map<String, Integer> levels, boolean rich) {
        List<Step> byLevel = levels.keySet().stream()
                .map(rubric::step)
                .sorted(Comparator.comparing(step -> levels.getOrDefault(step.code(), 0)))
                .toList();
        Step weakest = byLevel.get(0);
        Step best = byLevel.get(byLevel.size() - 1);
        String strength = best.name() + ": " + best.sentence(levels.getOrDefault(best.code(), Step.LEVELS));
        String next = weakest.name() + ": " + weakest.coaching().get(0);
        return rich ? new Words(strength + alsoSteady(byLevel), next + watchFor(weakest)) : new Words(strength, next);
    }

    private static String alsoSteady(List<Step> byLevel) {
        return byLevel.size() < 2
                ? ""
                : "\nAlso steady: " + byLevel.get(byLevel.size() - 2).name() + ".";
    }

    private static String watchFor(Step step) {
        return step.hazards().isEmpty()
                ? ""
                : "\nWatch for: " + step.hazards().get(0) + ". Say aloud what you plan before you begin this step.";
    }
}
