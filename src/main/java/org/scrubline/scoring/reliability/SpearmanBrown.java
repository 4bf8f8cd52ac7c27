package org.scrubline.scoring.reliability;

import java.util.OptionalDouble;
import org.scrubline.scoring.Ratio;
import org.scrubline.scoring.Require;

/**
 * The prophecy formula: reliability of k times as many parallel observations, and the k a target needs.
 *
 * <p>Spearman, Br J Psychol 1910;3:271, doi:10.1111/j.2044-8295.1910.tb00206.x; Brown, Br J Psychol 1910;3:296,
 * doi:10.1111/j.2044-8295.1910.tb00207.x.
 */
public final class SpearmanBrown {
    private SpearmanBrown() {}

    /**
     * Reliability after lengthening: k r / (1 + (k - 1) r). A negative r below -1 / (k - 1) leaves the range in which
     * the formula means something.
     *
     * @param reliability r of the present observations, at most 1; may be negative
     * @param factor k, above 0, need not be whole; below 1 shortens
     * @return the projected reliability; empty when the denominator is 0
     * @throws IllegalArgumentException when the reliability is above 1 or NaN, or the factor is not above 0
     */
    public static OptionalDouble projected(double reliability, double factor) {
        Require.that(reliability <= 1, "A reliability must not be above 1, but is %s.", reliability);
        Require.positive("The lengthening factor", factor);
        return Ratio.of(factor * reliability, 1 + (factor - 1) * reliability);
    }

    /**
     * The factor a target needs: target (1 - r) / (r (1 - target)); rounding up is left to the caller.
     *
     * @param reliability r of the present observations, strictly between 0 and 1
     * @param target wanted reliability, strictly between 0 and 1
     * @return the factor, above 0; below 1 when fewer observations would do
     * @throws IllegalArgumentException when an argument is out of its range
     */
    public static double factorNeeded(double reliability, double target) {
        Require.insideUnit("The reliability", reliability);
        Require.insideUnit("The target", target);
        return target * (1 - reliability) / (reliability * (1 - target));
    }
}
