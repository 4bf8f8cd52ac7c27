package org.scrubline.scoring.reliability;

import java.util.OptionalDouble;
import org.scrubline.scoring.Ratio;
import org.scrubline.scoring.Require;

/**
 * The prophecy formula: reliability of k times as many parallel observations, and the k a target needs.
 *
 * <p>Spearman, Br J Psychol 1910;3:271; Brown, Br J Psychol 1910;3:296.
 */
public final class SpearmanBrown {
    private SpearmanBrown() {}

    /**
     * Reliability after lengthening: k r / (1 + (k - 1) r).
     *
     * @param reliability of the present observations, at most 1; may be negative
     * @param factor k, above 0, need not be whole
     * @return empty when the denominator is 0
     */
    public static OptionalDouble projected(double reliability, double factor) {
        Require.that(reliability <= 1, "A reliability must not be above 1, but is %s.", reliability);
        Require.positive("The lengthening factor", factor);
        return Ratio.of(factor * reliability, 1 + (factor - 1) * reliability);
    }

    /**
     * The factor a target needs: target (1 - r) / (r (1 - target)); rounding up is left to the caller.
     *
     * @param reliability of the present observations, strictly between 0 and 1
     * @param target wanted reliability, strictly between 0 and 1
     */
    public static double factorNeeded(double reliability, double target) {
        Require.insideUnit("The reliability", reliability);
        Require.insideUnit("The target", target);
        return target * (1 - reliability) / (reliability * (1 - target));
    }
}
