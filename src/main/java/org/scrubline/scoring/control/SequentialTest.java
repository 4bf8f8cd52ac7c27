package org.scrubline.scoring.control;

import org.scrubline.scoring.Require;

/**
 * Wald's sequential test of two failure rates, drawn as lines of cumulative failures against cases: failures at or above
 * h1 + s n speak for the unacceptable rate, at or below -h0 + s n for the acceptable one.
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

    /** Checks the order of the rates and the error probabilities. */
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

    /** P: ln(p1 / p0), evidence of a failure. */
    public double failureEvidence() {
        return Math.log(unacceptableRate / acceptableRate);
    }

    /** Q: ln((1 - p0) / (1 - p1)), evidence of a success for the acceptable rate. */
    public double successEvidence() {
        return Math.log1p(-acceptableRate) - Math.log1p(-unacceptableRate);
    }

    /** a: ln((1 - beta) / alpha), evidence at which p1 is accepted. */
    public double upperBound() {
        return Math.log((1 - beta) / alpha);
    }

    /** b: ln((1 - alpha) / beta), evidence at which p0 is accepted. */
    public double lowerBound() {
        return Math.log((1 - alpha) / beta);
    }

    /** s: failures a case on both lines. */
    public double slope() {
        return successEvidence() / (failureEvidence() + successEvidence());
    }

    /** h1: height of the upper line at 0 cases. */
    public double upperIntercept() {
        return upperBound() / (failureEvidence() + successEvidence());
    }

    /** h0: depth of the lower line at 0 cases. */
    public double lowerIntercept() {
        return lowerBound() / (failureEvidence() + successEvidence());
    }
}
