package org.scrubline.progress;

import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import org.scrubline.casework.StepState;
import org.scrubline.rubric.Step;
import org.scrubline.scoring.estimate.Interval;
import org.scrubline.scoring.estimate.ProportionInterval;

/** One step over all counted sheets. The states are counted apart, once, and never mixed. */
public final class StepProgress {

    private static final double CONFIDENCE = 0.95;

    private final Step step;
    private final boolean current;
    private final int fewest;
    private final List<StepScore> scores;
    private final int[] byLevel = new int[Step.LEVELS];
    private final int scored;
    private final int high;
    private final int settled;

    /**
     * Counts the scores of a step.
     *
     * @param step as the newest rubric that has it words it
     * @param current whether the newest rubric scored with still has it
     * @param fewest scores a share of the step needs before it is printed
     * @param scores one a sheet, oldest case first
     */
    StepProgress(Step step, boolean current, int fewest, List<StepScore> scores) {
        this.step = step;
        this.current = current;
        this.fewest = fewest;
        this.scores = List.copyOf(scores);
        int counting = 0;
        for (StepScore score : this.scores) {
            if (score.state() instanceof StepState.Scored scored) {
                byLevel[scored.level() - 1]++;
                counting += score.sheet().marks().awaitingCountersignature() ? 0 : 1;
            }
        }
        this.scored = Arrays.stream(byLevel).sum();
        this.high = Arrays.stream(byLevel, StepScore.HIGH - 1, Step.LEVELS).sum();
        this.settled = counting;
    }

    /** As the newest rubric that has it words it. */
    public Step step() {
        return step;
    }

    /** Whether the newest rubric scored with still has it. */
    public boolean current() {
        return current;
    }

    /** Scores a share of the step needs before it is printed. */
    public int fewest() {
        return fewest;
    }

    /** One a sheet, oldest case first. */
    public List<StepScore> scores() {
        return scores;
    }

    /** Number of sheets that scored the step: the denominator of its share. */
    public int scored() {
        return scored;
    }

    /** The same without sheets that await their countersignature: what counts toward a gate. */
    int settled() {
        return settled;
    }

    /** Number of sheets at each level, index 0 is level 1. */
    public List<Integer> byLevel() {
        return Arrays.stream(byLevel).boxed().toList();
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
        return high;
    }

    public boolean enough() {
        return scored >= fewest;
    }

    /** Wilson's 95 % interval of the share at level 4 or 5; 0 to 1 when never scored. */
    public Interval interval() {
        return ProportionInterval.wilson(high, scored, CONFIDENCE);
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
