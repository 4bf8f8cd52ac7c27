package org.scrubline.scoring.curve;

import java.util.Arrays;
import java.util.List;

/**
 * The next case by the case-by-case state: plain (no complexity), no gap, the panel's mean severity taken as known, no
 * widening. For comparison with other programs; pages use {@link Readiness}.
 *
 * @param chance expected chance that every critical step reaches the level
 * @param steps expected chance of each critical step
 * @param draws chance of the whole case in each of 4096 fixed draws of the state, ascending
 */
public record PlainNextCase(double chance, List<Double> steps, List<Double> draws) {

    private static final int DRAWS = 4096;

    public PlainNextCase {
        steps = List.copyOf(steps);
        draws = List.copyOf(draws);
    }

    /**
     * The next case of one trainee.
     *
     * @param path the trainee's history from the same fit and table
     * @param level lowest level that meets the standard
     */
    public static PlainNextCase of(
            PopulationFit fit, ScoreTable table, RunningPath path, List<String> criticalSteps, int level) {
        int[] critical = criticalSteps.stream()
                .mapToInt(table.steps()::indexOf)
                .filter(s -> s >= 0)
                .toArray();
        NextCase law = path.state().next(critical, new double[0], fit.panelSeverity());
        ModelPoint point = new ModelPoint(
                fit.psiFor(table), fit.kappa(), table.supervisors().size());
        ReadinessJudge.Chances chances =
                new ReadinessJudge(point, law, critical, criticalSteps, 1, DRAWS).chances(level);
        return new PlainNextCase(
                chances.mean(),
                Arrays.stream(chances.steps()).boxed().toList(),
                Arrays.stream(chances.sorted()).boxed().toList());
    }

    /** Probability that the chance of the whole case is at least this. */
    public double atLeast(double limit) {
        return (double) draws.stream().filter(p -> p >= limit).count() / draws.size();
    }
}
