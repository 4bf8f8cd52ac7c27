package org.scrubline.scoring.curve;

import java.util.Arrays;
import java.util.List;

/**
 * The next case by the case-by-case state: plain (no complexity), no gap, the panel's mean severity taken as known, no
 * widening. For comparison with other programs; pages use {@link Readiness}.
 *
 * @param chance expected chance that every critical step reaches the level, 0..1; 1 when the table lists none of them
 * @param steps expected chance of each critical step the table lists
 * @param draws chance of the whole case in each of 4096 fixed draws of the state, ascending
 */
public record PlainNextCase(double chance, List<Double> steps, List<Double> draws) {

    private static final int DRAWS = 4096;

    /**
     * Copies the lists and checks nothing.
     *
     * @param chance kept
     * @param steps copied
     * @param draws copied
     */
    public PlainNextCase {
        steps = List.copyOf(steps);
        draws = List.copyOf(draws);
    }

    /**
     * The next case of one trainee.
     *
     * @param fit the fit of the path
     * @param table the table of the path
     * @param path the trainee's history from the same fit and table
     * @param criticalSteps step codes; those the table does not list are left out
     * @param level lowest level that meets the standard, 2..K
     * @return chances of the next case
     * @throws IllegalArgumentException when levels or complexity values differ from the fit's
     * @throws IndexOutOfBoundsException when the scale lacks the level
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

    /**
     * {@return the share of draws in which the chance of the whole case is at least this, 0..1}
     *
     * @param limit a chance
     */
    public double atLeast(double limit) {
        return (double) draws.stream().filter(p -> p >= limit).count() / draws.size();
    }
}
