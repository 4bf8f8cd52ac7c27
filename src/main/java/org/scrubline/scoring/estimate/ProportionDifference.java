package org.scrubline.scoring.estimate;

import static org.scrubline.scoring.Distributions.twoSidedZ;

import org.scrubline.scoring.Require;

/**
 * Intervals of the difference of two independent proportions, first minus second.
 *
 * <p>Both groups need at least one case. Newcombe, Stat Med 1998;17:873,
 * doi:10.1002/(SICI)1097-0258(19980430)17:8&lt;873::AID-SIM779&gt;3.0.CO;2-I (hybrid score interval, method 10).
 */
public final class ProportionDifference {
    private ProportionDifference() {}

    /**
     * Newcombe's hybrid score interval: with d = p1 - p2 and Wilson limits l and u of each, low = d - sqrt((p1 - l1)² +
     * (u2 - p2)²), high = d + sqrt((u1 - p1)² + (p2 - l2)²). A closed form, with width also at shares of 0 and 1.
     *
     * @param successes1 of the first group, 0 to n1
     * @param n1 cases of the first group, 1 or more
     * @param successes2 of the second group, 0 to n2
     * @param n2 cases of the second group, 1 or more
     * @param confidence strictly between 0 and 1
     * @return limits inside -1 to 1 but for rounding
     * @throws IllegalArgumentException when an argument is out of its range
     */
    public static Interval newcombe(int successes1, int n1, int successes2, int n2, double confidence) {
        double p1 = share(successes1, n1);
        double p2 = share(successes2, n2);
        Interval first = ProportionInterval.wilson(successes1, n1, confidence);
        Interval second = ProportionInterval.wilson(successes2, n2, confidence);
        return new Interval(
                p1 - p2 - Math.hypot(p1 - first.low(), second.high() - p2),
                p1 - p2 + Math.hypot(first.high() - p1, p2 - second.low()));
    }

    /**
     * The normal approximation, p1 - p2 ± z sqrt(p1 (1 - p1) / n1 + p2 (1 - p2) / n2), unclipped; without width when
     * both shares are 0 or 1. For comparison only.
     *
     * @param successes1 of the first group, 0 to n1
     * @param n1 cases of the first group, 1 or more
     * @param successes2 of the second group, 0 to n2
     * @param n2 cases of the second group, 1 or more
     * @param confidence strictly between 0 and 1
     * @return limits that may leave -1 to 1
     * @throws IllegalArgumentException when an argument is out of its range
     */
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
