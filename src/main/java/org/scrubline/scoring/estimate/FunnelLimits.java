package org.scrubline.scoring.estimate;

import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.scrubline.scoring.Distributions;
import org.scrubline.scoring.Require;

/**
 * Limits of a funnel plot of proportions around a target: where a unit of n cases lies with a given tail probability
 * when its true rate is the target. A band of 95 % has the tails .025 and .975.
 *
 * <p>Spiegelhalter, Stat Med 2005;24:1185, doi:10.1002/sim.1970. The limits say what is expected by chance alone; with
 * over-dispersion (see {@link FunnelDispersion}) too many units lie outside. Accuracy that of the library's binomial
 * distribution.
 *
 * @param target rate, strictly between 0 and 1
 */
public record FunnelLimits(double target) {

    /**
     * Checks the target.
     *
     * @param target strictly between 0 and 1
     * @throws IllegalArgumentException when it is not
     */
    public FunnelLimits {
        Require.insideUnit("The target", target);
    }

    /**
     * {@return the normal limit, a rate: target + z(tail) sqrt(target (1 - target) / n); unclipped, so it may leave 0
     * to 1}
     *
     * @param n cases of the unit, 1 or more
     * @param tail probability below the limit, strictly between 0 and 1
     * @throws IllegalArgumentException when an argument is out of its range
     */
    public double normal(int n, double tail) {
        requireUnit(n, tail);
        return target + Distributions.normalQuantile(tail) * Math.sqrt(target * (1 - target) / n);
    }

    /**
     * {@return the smallest number r of events, 0 to n, with P(X ≤ r) of at least {@code tail}}
     *
     * @param n cases of the unit, 1 or more
     * @param tail probability, strictly between 0 and 1
     * @throws IllegalArgumentException when an argument is out of its range
     */
    public int quantile(int n, double tail) {
        requireUnit(n, tail);
        return BinomialDistribution.of(n, target).inverseCumulativeProbability(tail);
    }

    /**
     * {@return the exact limit, a rate from 0 to 1: (r - (P(X ≤ r) - tail) / P(X = r)) / n with r the {@link
     * #quantile}, so between (r - 1) / n and r / n by the distribution function; not below 0}
     *
     * @param n cases of the unit, 1 or more
     * @param tail probability below the limit, strictly between 0 and 1
     * @throws IllegalArgumentException when an argument is out of its range
     */
    public double exact(int n, double tail) {
        int r = quantile(n, tail);
        BinomialDistribution binomial = BinomialDistribution.of(n, target);
        double excess = (binomial.cumulativeProbability(r) - tail) / binomial.probability(r);
        return Math.max(0, (r - excess) / n);
    }

    /**
     * {@return the distance of an observed rate from the target in standard errors, above 0 when the rate is above}
     *
     * @param events from 0 to n
     * @param n cases of the unit, 1 or more
     * @throws IllegalArgumentException when an argument is out of its range
     */
    public double zScore(int events, int n) {
        Require.atLeast("The number of cases of a unit", n, 1);
        Require.that(events >= 0 && events <= n, "The number of events must lie from 0 to %s, but is %s.", n, events);
        return ((double) events / n - target) / Math.sqrt(target * (1 - target) / n);
    }

    private static void requireUnit(int n, double tail) {
        Require.atLeast("The number of cases of a unit", n, 1);
        Require.insideUnit("The tail probability", tail);
    }
}
