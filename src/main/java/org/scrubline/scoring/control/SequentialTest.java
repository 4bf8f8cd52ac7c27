package org.scrubline.scoring.control;

import org.scrubline.scoring.Require;

/**
 * Wald's sequential test of two failure rates, drawn as lines of cumulative failures against cases: failures at or
 * above h1 + s n speak for the unacceptable rate, at or below -h0 + s n for the acceptable one.
 *
 * <p>Error probabilities hold approximately (overshoot is neglected), and only for one pass, not when the chart is
 * started again and again. Wald, Ann Math Stat 1945;16:117, doi:10.1214/aoms/1177731118.
 *
 * @param acceptableRate p0, above 0
 * @param unacceptableRate p1, above p0, below 1
 * @param alpha probability to call p0 unacceptable, between 0 and 1
 * @param beta probability to call p1 acceptable, between 0 and 1; alpha + beta below 1
 */
public record SequentialTest(double acceptableRate, double unacceptableRate, double alpha, double beta) {

    /**
     * Checks the design.
     *
     * @param acceptableRate strictly between 0 and 1
     * @param unacceptableRate above it, below 1
     * @param alpha strictly between 0 and 1
     * @param beta strictly between 0 and 1, with alpha less than 1
     * @throws IllegalArgumentException when a component is out of its range
     */
    public SequentialTest {
        Require.insideUnit("p0", acceptableRate);
        Require.insideUnit("p1", unacceptableRate);
        Require.that(
                acceptableRate < unacceptableRate,
                "p0 must be below p1, but %s is not below %s.",
                acceptableRate,
                unacceptableRate);
        Require.insideUnit("alpha", alpha);
        Require.insideUnit("beta", beta);
        Require.that(alpha + beta < 1, "alpha and beta must add up to less than 1.");
    }

    /** {@return P = ln(p1 / p0), evidence of a failure for the unacceptable rate, above 0} */
    public double failureEvidence() {
        return Math.log(unacceptableRate / acceptableRate);
    }

    /** {@return Q = ln((1 - p0) / (1 - p1)), evidence of a success for the acceptable rate, above 0} */
    public double successEvidence() {
        return Math.log1p(-acceptableRate) - Math.log1p(-unacceptableRate);
    }

    /** {@return a = ln((1 - beta) / alpha), evidence at which p1 is accepted, above 0} */
    public double upperBound() {
        return Math.log((1 - beta) / alpha);
    }

    /** {@return b = ln((1 - alpha) / beta), evidence at which p0 is accepted, above 0} */
    public double lowerBound() {
        return Math.log((1 - alpha) / beta);
    }

    /** {@return s = Q / (P + Q), failures a case on both lines, between p0 and p1} */
    public double slope() {
        return successEvidence() / (failureEvidence() + successEvidence());
    }

    /** {@return h1 = a / (P + Q), height of the upper line at 0 cases, in failures} */
    public double upperIntercept() {
        return upperBound() / (failureEvidence() + successEvidence());
    }

    /** {@return h0 = b / (P + Q), depth of the lower line at 0 cases, in failures, above 0} */
    public double lowerIntercept() {
        return lowerBound() / (failureEvidence() + successEvidence());
    }
}
