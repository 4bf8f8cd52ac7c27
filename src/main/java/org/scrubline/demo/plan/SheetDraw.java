package org.scrubline.demo.plan;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.scrubline.casework.StepState;
import org.scrubline.casework.StepState.BySupervisor.Cause;
import org.scrubline.demo.plan.DemoCast.Supervisor;
import org.scrubline.demo.plan.DemoCast.Trainee;
import org.scrubline.rubric.EventCatalogue;
import org.scrubline.rubric.Phase;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Step;

/** Draws what each scorer of one case says, from what happened in it. */
final class SheetDraw {

    private static final double NOT_SEEN = .015;
    private static final int FEWEST_BEGUN = 3;
    private static final double HOURS_A_DAY = 24;

    /** What happened, whoever saw it. */
    record Happened(
            Rubric rubric,
            Trainee trainee,
            double shown,
            List<PlannedEvent> events,
            Set<String> bySupervisor,
            Set<String> notPart) {}

    private final Levels levels;
    private final Happened happened;
    private final Draws draws;

    SheetDraw(Levels levels, Happened happened, Draws draws) {
        this.levels = levels;
        this.happened = happened;
        this.draws = draws;
    }

    /** A whole sheet. */
    PlannedSheet whole(Asked asked, Supervisor scorer, Duration delay) {
        double days = delay.toMinutes() / 60. / HOURS_A_DAY;
        Map<String, Integer> drawn =
                levels.draw(happened.rubric(), happened.trainee(), scorer, happened.shown(), days, draws);
        Map<String, StepState> steps = new LinkedHashMap<>();
        for (Step step : happened.rubric().steps()) {
            steps.put(step.code(), state(step, drawn.getOrDefault(step.code(), 1)));
        }
        Words words = Words.of(happened.rubric(), PlannedSheet.levels(steps), scorer, draws);
        return new PlannedSheet(
                scorer.id(),
                asked.operation().slot().endedAt().plus(delay),
                steps,
                happened.events(),
                Measures.draw(happened.rubric(), steps, happened.events(), draws),
                words.strength(),
                words.nextStep());
    }

    /** The first steps of it. */
    PlannedSheet begun(PlannedSheet whole) {
        int said = FEWEST_BEGUN + draws.below(Math.max(1, whole.steps().size() - FEWEST_BEGUN - 1));
        Map<String, StepState> steps = new LinkedHashMap<>();
        whole.steps().entrySet().stream()
                .limit(said)
                .filter(entry -> !entry.getValue().equals(new StepState.BySupervisor(Cause.AFTER_TAKEOVER)))
                .forEach(entry -> steps.put(entry.getKey(), entry.getValue()));
        return new PlannedSheet(whole.scorer(), whole.signedAt(), steps, List.of(), Map.of(), "", "");
    }

    /** Nothing said. */
    static PlannedSheet untouched(PlannedSheet whole) {
        return new PlannedSheet(whole.scorer(), whole.signedAt(), Map.of(), List.of(), Map.of(), "", "");
    }

    private StepState state(Step step, int level) {
        int highest = Events.highest(happened.events(), step.code());
        if (highest < Step.LEVELS) {
            return new StepState.Scored(Math.min(level, highest));
        }
        if (step.onlyWhenConverted() || happened.notPart().contains(step.code())) {
            return new StepState.NotPart();
        }
        if (afterTakeover(step)) {
            return new StepState.BySupervisor(Cause.AFTER_TAKEOVER);
        }
        if (happened.bySupervisor().contains(step.code())) {
            return new StepState.BySupervisor(Cause.PLAN);
        }
        return draws.chance(NOT_SEEN) ? new StepState.NotSeen() : new StepState.Scored(level);
    }

    /** Whether a step of its phase was taken over before it. */
    private boolean afterTakeover(Step step) {
        List<Step> steps = happened.rubric().steps();
        Phase phase = step.phase();
        return steps.subList(0, steps.indexOf(step)).stream()
                .filter(before -> before.phase() == phase)
                .anyMatch(before -> happened.events().stream()
                        .anyMatch(event -> event.code().equals(EventCatalogue.TAKEOVER)
                                && event.step().equals(before.code())));
    }
}
