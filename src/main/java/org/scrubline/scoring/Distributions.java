package org.scrubline.scoring;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.statistics.distribution.BetaDistribution;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.ContinuousDistribution;
import org.apache.commons.statistics.distribution.FDistribution;
import org.apache.commons.statistics.distribution.GammaDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/** Quantiles and upper tails used by the statistics, to the accuracy of the library's distribution functions. */
public final class Distributions {
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
    private static final int BISECTIONS = 200;

    private Distributions() {}

    /** Quantile of the standard normal distribution; {@code p} strictly inside 0 to 1. */
    public static double normalQuantile(double p) {
        return NORMAL.inverseCumulativeProbability(Require.insideUnit("A probability", p));
    }

    /** The z for a two-sided interval, 1.96 for a confidence of .95. */
    public static double twoSidedZ(double confidence) {
        return NORMAL.inverseSurvivalProbability((1 - Require.insideUnit("The confidence", confidence)) / 2);
    }

    /** Probability of a standard normal value above {@code z}. */
    public static double normalUpper(double z) {
        return NORMAL.survivalProbability(z);
    }

    /** Probability of a standard normal value as far from 0 as {@code z}, on either side. */
    public static double normalTwoSided(double z) {
        return 2 * NORMAL.survivalProbability(Math.abs(z));
    }

    /** Quantile of the beta distribution with positive shapes {@code a} and {@code b}. */
    public static double betaQuantile(double p, double a, double b) {
        return quantile(BetaDistribution.of(a, b), p);
    }

    /** Quantile of the F distribution; degrees of freedom need not be whole. */
    public static double fQuantile(double p, double numerator, double denominator) {
        return quantile(FDistribution.of(numerator, denominator), p);
    }

    /** Probability of an F value above {@code f}. */
    public static double fUpper(double f, double numerator, double denominator) {
        return FDistribution.of(numerator, denominator).survivalProbability(f);
    }

    /** Quantile of the t distribution. */
    public static double tQuantile(double p, double degrees) {
        return quantile(TDistribution.of(degrees), p);
    }

    /** Quantile of the gamma distribution with scale 1. */
    public static double gammaQuantile(double p, double shape) {
        return quantile(GammaDistribution.of(shape, 1), p);
    }

    /** Probability of a chi-squared value above {@code x}. */
    public static double chiSquaredUpper(double x, double degrees) {
        return ChiSquaredDistribution.of(degrees).survivalProbability(x);
    }

    private static double quantile(ContinuousDistribution distribution, double p) {
        return distribution.inverseCumulativeProbability(Require.insideUnit("A probability", p));
    }

    /**
     * The root of a function of opposite signs at {@code low} and {@code high}, by halving until the ends touch.
     *
     * @return a point next to which the sign changes, to the last place
     */
    public static double root(DoubleUnaryOperator function, double low, double high) {
        double left = low;
        double right = high;
        boolean leftPositive = function.applyAsDouble(left) > 0;
        for (int i = 0; i < BISECTIONS; i++) {
            double middle = 0.5 * (left + right);
            if (middle == left || middle == right) {
                break;
            }
            if (function.applyAsDouble(middle) > 0 == leftPositive) {
                left = middle;
            } else {
                right = middle;
            }
        }
        return 0.5 * (left + right);
    }
}
