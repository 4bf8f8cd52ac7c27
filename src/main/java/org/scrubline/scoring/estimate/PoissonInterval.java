package org.scrubline.scoring.estimate;

import static org.scrubline.scoring.Distributions.gammaQuantile;
import static org.scrubline.scoring.Distributions.twoSidedZ;

import org.scrubline.scoring.Require;

/**
 * Intervals of the expectation of an observed count; divided by an expected count they are intervals of the ratio of
 * observed to expected.
 */
public final class PoissonInterval {
    private PoissonInterval() {}

    /**
     * The exact interval, each Poisson tail at most half of the error probability: half the chi-squared quantiles of 2
     * x and 2 x + 2 degrees of freedom. The lower limit of 0 is 0. It covers at least the confidence, usually more.
     *
     * <p>Garwood, Biometrika 1936;28:437, doi:10.1093/biomet/28.3-4.437.
     *
     * @param count x, observed, 0 or more
     * @param confidence strictly between 0 and 1
     * @return limits of the expectation, 0 or more
     * @throws IllegalArgumentException when an argument is out of its range
     */
    public static Interval exact(int count, double confidence) {
        double tail = (1 - Require.insideUnit("The confidence", confidence)) / 2;
        Require.atLeast("The observed count", count, 0);
        return new Interval(count == 0 ? 0 : gammaQuantile(tail, count), gammaQuantile(1 - tail, count + 1.0));
    }

    /**
     * Byar's approximation: low = x (1 - 1 / 9x - z / 3 sqrt(x))³, not below 0, and high = y (1 - 1 / 9y + z / 3
     * sqrt(y))³ with y = x + 1. The lower limit of 0 is 0. Breslow and Day, Statistical Methods in Cancer Research,
     * volume II, 1987.
     *
     * @param count x, observed, 0 or more
     * @param confidence strictly between 0 and 1
     * @return limits of the expectation, 0 or more
     * @throws IllegalArgumentException when an argument is out of its range
     */
    public static Interval byar(int count, double confidence) {
        double z = twoSidedZ(confidence);
        Require.atLeast("The observed count", count, 0);
        double next = count + 1.0;
        return new Interval(
                count == 0 ? 0 : Math.max(0, count * Math.pow(1 - 1 / (9.0 * count) - z / (3 * Math.sqrt(count)), 3)),
                next * Math.pow(1 - 1 / (9 * next) + z / (3 * Math.sqrt(next)), 3));
    }
}
