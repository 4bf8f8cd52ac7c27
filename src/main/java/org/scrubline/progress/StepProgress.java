package org.scrubline.progress;

import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.scrubline.casework.StepState;
import org.scrubline.rubric.Step;
import org.scrubline.scoring.estimate.Interval;
import org.scrubline.scoring.estimate.ProportionInterval;

/**
 * One step over all counted sheets.
 *
 * @param step as the newest rubric that has it words it
 * @param current whether the newest rubric scored with still has it
 * @param fewest scores a share of the step needs before it is printed
 * @param scores one a sheet, oldest case first; the states are counted apart and never mixed
 */
public record StepProgress(Step step, boolean current, int fewest, List<StepScore> scores) {

    private static final double CONFIDENCE = 0.95;

    public StepProgress {
        scores = List.copyOf(scores);
    }

    /** Number of sheets that scored the step: the denominator of its share. */
    public int scored() {
        return (int) scores.stream().filter(score -> score.level().isPresent()).count();
    }

    /** The same without sheets that await their countersignature: what counts toward a gate. */
    int settled() {
        return (int) scores.stream()
                .filter(score -> score.level().isPresent())
                .filter(score -> !score.sheet().marks().awaitingCountersignature())
                .count();
    }

    /** Number of sheets at each level, index 0 is level 1. */
    public List<Integer> byLevel() {
        return IntStream.rangeClosed(1, Step.LEVELS)
                .map(level -> (int) scores.stream()
                        .filter(score -> score.level().orElse(0) == level)
                        .count())
                .boxed()
                .toList();
    }

    public int bySupervisor() {
        return count(StepState.BySupervisor.class);
    }

    public int notPart() {
        return count(StepState.NotPart.class);
    }

    public int notSeen() {
        return count(StepState.NotSeen.class);
    }

    private int count(Class<? extends StepState> kind) {
        return (int)
                scores.stream().filter(score -> kind.isInstance(score.state())).count();
    }

    /** Number of scores at level 4 or 5. */
    public int high() {
        return scored() - (int) scores.stream().filter(StepScore::low).count();
    }

    public boolean enough() {
        return scored() >= fewest;
    }

    /** Wilson's 95 % interval of the share at level 4 or 5; 0 to 1 when never scored. */
    public Interval interval() {
        return ProportionInterval.wilson(high(), scored(), CONFIDENCE);
    }

    /** In how many different cases the step was at level 1 to 3. */
    public int lowCases() {
        return lowDistinct(score -> score.sheet().caseId());
    }

    /** How many different people scored the step at level 1 to 3. */
    public int lowScorers() {
        return lowDistinct(score -> score.sheet().signerId());
    }

    private int lowDistinct(Function<StepScore, Object> what) {
        return (int) scores.stream().filter(StepScore::low).map(what).distinct().count();
    }

    /** Whether the gates ask for this step: critical, still in the rubric, and not kept for converted cases. */
    boolean gated() {
        return current && step.critical() && !step.onlyWhenConverted();
    }
}
