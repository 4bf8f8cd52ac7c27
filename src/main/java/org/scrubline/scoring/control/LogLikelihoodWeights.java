package org.scrubline.scoring.control;

import org.scrubline.scoring.Require;

/**
 * The evidence one case brings for a failure rate of {@code alternative} against {@code reference}: the logarithm of
 * the ratio of the two probabilities of what was seen.
 *
 * <p>failure: ln(alternative / reference); success: ln((1 - alternative) / (1 - reference)). Positive evidence speaks
 * for the alternative. Weights may also be given as they are; the charts check their signs. Steiner, Cook, Farewell and
 * Treasure, Biostatistics 2000;1:441, doi:10.1093/biostatistics/1.4.441.
 *
 * @param failure weight of a failure, in natural logarithms
 * @param success weight of a success, of the other sign
 */
public record LogLikelihoodWeights(double failure, double success) {

    /**
     * Weights for two failure rates.
     *
     * @param reference rate as things should be, strictly between 0 and 1
     * @param alternative rate to be found, strictly between 0 and 1, another one
     * @return failure above and success below 0 for a worse alternative, the reverse for a better one
     * @throws IllegalArgumentException when a rate is out of its range or both are equal
     */
    public static LogLikelihoodWeights between(double reference, double alternative) {
        Require.insideUnit("The reference failure rate", reference);
        Require.insideUnit("The alternative failure rate", alternative);
        Require.that(reference != alternative, "The two failure rates must differ, but both are %s.", reference);
        return new LogLikelihoodWeights(
                Math.log(alternative / reference), Math.log1p(-alternative) - Math.log1p(-reference));
    }

    /**
     * Weights for a case whose odds of failure are multiplied by {@code oddsRatio} R: with t = 1 - p + R p, failure
     * ln(R / t), success ln(1 / t).
     *
     * @param reference failure probability p of this case as things should be, strictly between 0 and 1
     * @param oddsRatio R, above 0; above 1 looks for a worse rate, below 1 for a better one; not 1
     * @return failure above and success below 0 for R above 1, the reverse below
     * @throws IllegalArgumentException when an argument is out of its range or the ratio is 1
     */
    public static LogLikelihoodWeights forOddsRatio(double reference, double oddsRatio) {
        Require.insideUnit("The failure probability", reference);
        Require.positive("The odds ratio", oddsRatio);
        Require.that(oddsRatio != 1, "An odds ratio of 1 is no change to look for.");
        double total = 1 - reference + oddsRatio * reference;
        return new LogLikelihoodWeights(Math.log(oddsRatio / total), -Math.log(total));
    }

    /**
     * {@return the run length of the chart with these weights when cases fail independently with probability {@code
     * failureRate}}
     *
     * @param limit height of the signal, above 0
     * @param failureRate 0 to 1
     * @throws IllegalArgumentException when an argument is out of its range, the weights have not opposite signs, or
     *     the limit is 1e5 times the sum of their sizes or more
     */
    public RunLength runLength(double limit, double failureRate) {
        Require.probability("The failure rate", failureRate);
        return failure > 0
                ? RunLength.of(failure, -success, limit, failureRate)
                : RunLength.of(success, -failure, limit, 1 - failureRate);
    }
}
