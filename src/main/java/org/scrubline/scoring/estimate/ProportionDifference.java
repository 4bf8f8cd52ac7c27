package org.scrubline.scoring.estimate;

import static org.scrubline.scoring.Distributions.twoSidedZ;

import org.scrubline.scoring.Require;

/**
 * Intervals of the difference of two independent proportions, first minus second.
 *
 * <p>Both groups need at least one case. Newcombe, Stat Med 1998;17:873 (hybrid score interval, method 10).
 */
public final class ProportionDifference {
    private ProportionDifference() {}

    /** Newcombe's hybrid score interval, from the Wilson limits of both; inside -1 to 1. */
    public static Interval newcombe(int successes1, int n1, int successes2, int n2, double confidence) {
        double p1 = share(successes1, n1);
        double p2 = share(successes2, n2);
        Interval first = ProportionInterval.wilson(successes1, n1, confidence);
        Interval second = ProportionInterval.wilson(successes2, n2, confidence);
        return new Interval(
                p1 - p2 - Math.hypot(p1 - first.low(), second.high() - p2),
                p1 - p2 + Math.hypot(first.high() - p1, p2 - second.low()));
    }

    /** The normal approximation, unclipped; for comparison only. */
    public static Interval wald(int successes1, int n1, int successes2, int n2, double confidence) {
        double p1 = share(successes1, n1);
        double p2 = share(successes2, n2);
        double half = twoSidedZ(confidence) * Math.sqrt(p1 * (1 - p1) / n1 + p2 * (1 - p2) / n2);
        return new Interval(p1 - p2 - half, p1 - p2 + half);
    }

    private static double share(int successes, int n) {
        Require.atLeast("The number of cases of each group", n, 1);
        Require.that(
                successes >= 0 && successes <= n,
                "The number of successes must lie from 0 to %s, but is %s.",
                n,
                successes);
        return (double) successes / n;
    }
}
