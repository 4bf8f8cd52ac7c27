package org.scrubline.scoring;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.statistics.distribution.BetaDistribution;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.ContinuousDistribution;
import org.apache.commons.statistics.distribution.FDistribution;
import org.apache.commons.statistics.distribution.GammaDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * Quantiles and upper tails used by the statistics, and a root by bisection, all to the accuracy of the library's
 * distribution functions.
 *
 * <p>Upper tails are survival functions of their own, not 1 minus a distribution function, so small ones keep their
 * digits. Quantiles need a probability strictly inside 0 to 1. Shapes and degrees of freedom are positive, need not be
 * whole, and throw an {@link IllegalArgumentException} when they are 0 or less. A NaN in the place of a tail's value
 * gives NaN.
 */
public final class Distributions {
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
    private static final int BISECTIONS = 200;

    private Distributions() {}

    /**
     * {@return the z with a standard normal probability of {@code p} below it; 0 at .5}
     *
     * @param p probability, strictly inside 0 to 1
     * @throws IllegalArgumentException when {@code p} is not
     */
    public static double normalQuantile(double p) {
        return NORMAL.inverseCumulativeProbability(Require.insideUnit("A probability", p));
    }

    /**
     * {@return the z for a two-sided interval, above 0; 1.96 for a confidence of .95}
     *
     * @param confidence strictly inside 0 to 1
     * @throws IllegalArgumentException when it is not
     */
    public static double twoSidedZ(double confidence) {
        return NORMAL.inverseSurvivalProbability((1 - Require.insideUnit("The confidence", confidence)) / 2);
    }

    /**
     * {@return the probability of a standard normal value above {@code z}}
     *
     * @param z any number; an infinite one gives 0 or 1
     */
    public static double normalUpper(double z) {
        return NORMAL.survivalProbability(z);
    }

    /**
     * {@return the probability of a standard normal value as far from 0 as {@code z}, on either side}
     *
     * @param z of either sign
     */
    public static double normalTwoSided(double z) {
        return 2 * NORMAL.survivalProbability(Math.abs(z));
    }

    /**
     * {@return the quantile of the beta distribution, inside 0 to 1}
     *
     * @param p probability, strictly inside 0 to 1
     * @param a first shape, above 0
     * @param b second shape, above 0
     * @throws IllegalArgumentException when an argument is out of its range
     */
    public static double betaQuantile(double p, double a, double b) {
        return quantile(BetaDistribution.of(a, b), p);
    }

    /**
     * {@return the quantile of the F distribution, 0 or more}
     *
     * @param p probability, strictly inside 0 to 1
     * @param numerator degrees of freedom, above 0
     * @param denominator degrees of freedom, above 0
     * @throws IllegalArgumentException when an argument is out of its range
     */
    public static double fQuantile(double p, double numerator, double denominator) {
        return quantile(FDistribution.of(numerator, denominator), p);
    }

    /**
     * {@return the probability of an F value above {@code f}; 1 for an {@code f} of 0 or less}
     *
     * @param f ratio of two mean squares
     * @param numerator degrees of freedom, above 0
     * @param denominator degrees of freedom, above 0
     * @throws IllegalArgumentException when degrees of freedom are not above 0
     */
    public static double fUpper(double f, double numerator, double denominator) {
        return FDistribution.of(numerator, denominator).survivalProbability(f);
    }

    /**
     * {@return the quantile of Student's t distribution; 0 at .5}
     *
     * @param p probability, strictly inside 0 to 1
     * @param degrees of freedom, above 0
     * @throws IllegalArgumentException when an argument is out of its range
     */
    public static double tQuantile(double p, double degrees) {
        return quantile(TDistribution.of(degrees), p);
    }

    /**
     * {@return the quantile of the gamma distribution with scale 1, 0 or more}
     *
     * @param p probability, strictly inside 0 to 1
     * @param shape above 0
     * @throws IllegalArgumentException when an argument is out of its range
     */
    public static double gammaQuantile(double p, double shape) {
        return quantile(GammaDistribution.of(shape, 1), p);
    }

    /**
     * {@return the probability of a chi-squared value above {@code x}; 1 for an {@code x} of 0 or less}
     *
     * @param x the statistic
     * @param degrees of freedom, above 0
     * @throws IllegalArgumentException when degrees of freedom are not above 0
     */
    public static double chiSquaredUpper(double x, double degrees) {
        return ChiSquaredDistribution.of(degrees).survivalProbability(x);
    }

    private static double quantile(ContinuousDistribution distribution, double p) {
        return distribution.inverseCumulativeProbability(Require.insideUnit("A probability", p));
    }

    /**
     * The root of a function of opposite signs at {@code low} and {@code high}, by halving until the ends touch, at
     * most 200 times.
     *
     * <p>The signs are not checked: without a change of sign the answer is {@code high}. A value that is 0 or NaN
     * counts as not positive. With several changes of sign one of them is found.
     *
     * @param function continuous between the ends
     * @param low one end, finite
     * @param high the other end, finite
     * @return a point next to which the sign changes, to the last place, or to 2^-200 of the first distance when a root
     *     near 0 has finer places
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
