package org.scrubline.scoring.estimate;

import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.scrubline.scoring.Distributions;
import org.scrubline.scoring.Require;

/**
 * Limits of a funnel plot of proportions around a target: where a unit of n cases lies with a given tail probability
 * when its true rate is the target.
 *
 * <p>Spiegelhalter, Stat Med 2005;24:1185, doi:10.1002/sim.1970. The limits say what is expected by chance alone; with
 * over-dispersion (see {@link FunnelDispersion}) too many units lie outside.
 *
 * @param target rate, strictly between 0 and 1
 */
public record FunnelLimits(double target) {

    /** Checks the target. */
    public FunnelLimits {
        Require.insideUnit("The target", target);
    }

    /** The normal limit, unclipped: target + z(tail) times the standard error. */
    public double normal(int n, double tail) {
        requireUnit(n, tail);
        return target + Distributions.normalQuantile(tail) * Math.sqrt(target * (1 - target) / n);
    }

    /** The smallest number r of events with P(X <= r) of at least {@code tail}. */
    public int quantile(int n, double tail) {
        requireUnit(n, tail);
        return BinomialDistribution.of(n, target).inverseCumulativeProbability(tail);
    }

    /** The exact limit: between r - 1 and r by the distribution function, over n, not below 0. */
    public double exact(int n, double tail) {
        int r = quantile(n, tail);
        BinomialDistribution binomial = BinomialDistribution.of(n, target);
        double excess = (binomial.cumulativeProbability(r) - tail) / binomial.probability(r);
        return Math.max(0, (r - excess) / n);
    }

    /** Distance of an observed rate from the target in standard errors. */
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
