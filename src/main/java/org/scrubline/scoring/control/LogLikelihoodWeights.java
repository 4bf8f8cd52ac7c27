package org.scrubline.scoring.control;

import org.scrubline.scoring.Require;

/**
 * The evidence one case brings for a failure rate of {@code alternative} against {@code reference}: the logarithm of
 * the ratio of the two probabilities of what was seen.
 *
 * <p>failure: ln(alternative / reference); success: ln((1 - alternative) / (1 - reference)). Positive evidence speaks
 * for the alternative. Steiner, Cook, Farewell and Treasure, Biostatistics 2000;1:441,
 * doi:10.1093/biostatistics/1.4.441.
 *
 * @param failure weight of a failure
 * @param success weight of a success, of the other sign
 */
public record LogLikelihoodWeights(double failure, double success) {

    /** Weights for two failure rates strictly between 0 and 1 that differ. */
    public static LogLikelihoodWeights between(double reference, double alternative) {
        Require.insideUnit("The reference failure rate", reference);
        Require.insideUnit("The alternative failure rate", alternative);
        Require.that(reference != alternative, "The two failure rates must differ, but both are %s.", reference);
        return new LogLikelihoodWeights(
                Math.log(alternative / reference), Math.log1p(-alternative) - Math.log1p(-reference));
    }

    /**
     * Weights for a case whose odds of failure are multiplied by {@code oddsRatio}.
     *
     * @param reference failure probability of this case as things should be, strictly between 0 and 1
     * @param oddsRatio above 1 looks for a worse rate, below 1 for a better one; not 1
     */
    public static LogLikelihoodWeights forOddsRatio(double reference, double oddsRatio) {
        Require.insideUnit("The failure probability", reference);
        Require.positive("The odds ratio", oddsRatio);
        Require.that(oddsRatio != 1, "An odds ratio of 1 is no change to look for.");
        double total = 1 - reference + oddsRatio * reference;
        return new LogLikelihoodWeights(Math.log(oddsRatio / total), -Math.log(total));
    }

    /** Run length of the chart with these weights when cases fail with probability {@code failureRate}. */
    public RunLength runLength(double limit, double failureRate) {
        Require.probability("The failure rate", failureRate);
        return failure > 0
                ? RunLength.of(failure, -success, limit, failureRate)
                : RunLength.of(success, -failure, limit, 1 - failureRate);
    }
}
