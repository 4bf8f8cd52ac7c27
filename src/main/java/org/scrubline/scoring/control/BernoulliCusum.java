package org.scrubline.scoring.control;

import java.util.ArrayList;
import java.util.List;
import org.scrubline.scoring.Require;

/**
 * The one-sided CUSUM of yes-or-no results: S = max(0, S + weight), start 0, a signal when S reaches the limit (slack
 * 1e-12). With {@link #between} and a worse alternative it is the ordinary chart for deterioration.
 *
 * <p>Reset rule: with {@code restart} the case after a signal starts again from 0, while the signalling case keeps the
 * height that reached the limit. Without it the chart runs on and signals at every case at or above the limit.
 *
 * <p>Steiner, Cook, Farewell and Treasure, Biostatistics 2000;1:441, doi:10.1093/biostatistics/1.4.441.
 *
 * @param weights evidence of a failure and of a success; one above, one below 0
 * @param limit height of the signal, above 0, in the units of the weights; a limit of 1e-12 or less signals at every
 *     case
 * @param restart whether the chart starts again from 0 after a signal
 */
public record BernoulliCusum(LogLikelihoodWeights weights, double limit, boolean restart) {

    /**
     * Checks the design.
     *
     * @param weights of opposite signs
     * @param limit finite, above 0
     * @param restart either
     * @throws IllegalArgumentException when weights have not opposite signs or the limit is not above 0
     */
    public BernoulliCusum {
        Require.positive("The limit", limit);
        Require.that(
                weights.failure() * weights.success() < 0,
                "The weights of a failure and of a success must have opposite signs, but are %s and %s.",
                weights.failure(),
                weights.success());
    }

    /**
     * The log-likelihood-ratio chart for a rate of {@code alternative} against {@code reference}, with restart.
     *
     * @param reference failure rate as things should be, strictly between 0 and 1
     * @param alternative failure rate to be found, strictly between 0 and 1, another one
     * @param limit height of the signal, above 0
     * @return the chart
     * @throws IllegalArgumentException when an argument is out of its range
     */
    public static BernoulliCusum between(double reference, double alternative, double limit) {
        return new BernoulliCusum(LogLikelihoodWeights.between(reference, alternative), limit, true);
    }

    /**
     * The chart over a series.
     *
     * @param failures in the order of the cases, true = failure; may be empty
     * @return one point a case, all of the stage {@link ChartPoint.Stage#WATCHING}
     */
    public List<ChartPoint> path(List<Boolean> failures) {
        return path(failures, 0);
    }

    List<ChartPoint> path(List<Boolean> failures, int casesBefore) {
        List<ChartPoint> points = new ArrayList<>(failures.size());
        double value = 0;
        for (boolean failure : failures) {
            value = Math.max(0, value + (failure ? weights.failure() : weights.success()));
            boolean signal = value >= limit - RunLength.SLACK;
            points.add(new ChartPoint(casesBefore + points.size() + 1, value, signal, ChartPoint.Stage.WATCHING));
            if (signal && restart) {
                value = 0;
            }
        }
        return List.copyOf(points);
    }

    /**
     * {@return the exact run length to the first signal when cases fail independently with probability {@code
     * failureRate}}
     *
     * @param failureRate 0 to 1
     * @throws IllegalArgumentException when it is not, or the limit is 1e5 times the sum of both weights' sizes or more
     */
    public RunLength runLength(double failureRate) {
        return weights.runLength(limit, failureRate);
    }
}
