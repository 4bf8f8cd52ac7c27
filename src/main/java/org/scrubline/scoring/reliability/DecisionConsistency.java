package org.scrubline.scoring.reliability;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.hipparchus.special.Beta;
import org.hipparchus.util.CombinatoricsUtils;
import org.scrubline.scoring.Ratio;
import org.scrubline.scoring.Require;

/**
 * How often two parallel tests of k items, each 0 or 1, would reach the same side of a cut, from one test: the
 * proportion of agreement and its kappa.
 *
 * <p>kappa = (agreement - c) / (1 - c) with c = u² + (1 - u)², u the share above the cut.
 *
 * @param agreement probability of the same decision twice, 1/2 to 1
 * @param kappa the same corrected for chance; empty when everybody is on one side
 */
public record DecisionConsistency(double agreement, OptionalDouble kappa) {

    private static DecisionConsistency of(double agreement, double above) {
        double chance = above * above + (1 - above) * (1 - above);
        return new DecisionConsistency(
                agreement, 1 - chance < 1e-14 ? OptionalDouble.empty() : Ratio.of(agreement - chance, 1 - chance));
    }

    /**
     * Huynh's estimate: beta-binomial scores with the mean of the data and KR-21 as reliability r; the two sums of a
     * person are independent given the person's own share, which has a beta law with shapes a = m (1 / r - 1) and k / r
     * - k - a, m the mean sum. Summed exactly over all pairs of sums, k² terms.
     *
     * <p>Huynh, J Educ Meas 1976;13:253 (from memory).
     *
     * @param scores persons x items of 0 and 1, at least 2 of each
     * @param cut smallest sum on the upper side, 1 to the number of items
     * @return agreement and kappa
     * @throws IllegalArgumentException when the table is too small or holds other numbers, the cut is out of its range,
     *     KR-21 is not between 0 and 1, or all sums lie at one end
     */
    public static DecisionConsistency huynh(double[][] scores, int cut) {
        CronbachAlpha test = requireBinary(scores, cut);
        int k = test.items();
        double reliability = test.kr21().orElse(0);
        Require.that(
                reliability > 0 && reliability < 1,
                "Huynh's estimate needs a KR-21 between 0 and 1, but it is %s.",
                reliability);
        double alpha = test.totalMean() * (1 / reliability - 1);
        double beta = k / reliability - k - alpha;
        Require.that(alpha > 0 && beta > 0, "Huynh's estimate needs sums that are not all at one end.");
        double above = 0;
        double both = 0;
        for (int x = cut; x <= k; x++) {
            above += Math.exp(logChoose(k, x) + Beta.logBeta(alpha + x, beta + k - x) - Beta.logBeta(alpha, beta));
            for (int y = cut; y <= k; y++) {
                both += Math.exp(logChoose(k, x)
                        + logChoose(k, y)
                        + Beta.logBeta(alpha + x + y, beta + 2.0 * k - x - y)
                        - Beta.logBeta(alpha, beta));
            }
        }
        return of(1 - 2 * above + 2 * both, above);
    }

    private static double logChoose(int n, int k) {
        return CombinatoricsUtils.binomialCoefficientLog(n, k);
    }

    /**
     * Subkoviak's estimate: each person's sum is binomial around a share regressed to the mean by alpha, alpha x own
     * share + (1 - alpha) x mean share; agreement is the mean of q² + (1 - q)² over persons, q the chance to reach the
     * cut. Sums that do not vary have alpha 0 here, so everybody is taken at the mean.
     *
     * <p>Subkoviak, J Educ Meas 1976;13:265 (from memory).
     *
     * @param scores persons x items of 0 and 1, at least 2 of each
     * @param cut smallest sum on the upper side, 1 to the number of items
     * @return agreement and kappa
     * @throws IllegalArgumentException when the table is too small or holds other numbers, the cut is out of its range,
     *     or alpha is negative
     */
    public static DecisionConsistency subkoviak(double[][] scores, int cut) {
        CronbachAlpha test = requireBinary(scores, cut);
        int k = test.items();
        double reliability = test.alpha().orElse(0);
        Require.that(
                reliability >= 0 && reliability <= 1,
                "Subkoviak's estimate needs an alpha from 0 to 1, but it is %s.",
                reliability);
        double mean = test.totalMean() / k;
        IntToDoubleFunction above = person -> {
            double share = Arrays.stream(scores[person]).sum() / k;
            double p = Math.min(1, Math.max(0, reliability * share + (1 - reliability) * mean));
            return BinomialDistribution.of(k, p).survivalProbability(cut - 1);
        };
        double meanAbove =
                IntStream.range(0, scores.length).mapToDouble(above).average().orElse(0);
        double agreement = IntStream.range(0, scores.length)
                .mapToDouble(above)
                .map(p -> p * p + (1 - p) * (1 - p))
                .average()
                .orElse(0);
        return of(agreement, meanAbove);
    }

    private static CronbachAlpha requireBinary(double[][] scores, int cut) {
        CronbachAlpha test = CronbachAlpha.of(scores);
        for (double[] row : scores) {
            for (double score : row) {
                Require.that(score == 0 || score == 1, "Decision consistency needs scores of 0 and 1, not %s.", score);
            }
        }
        Require.that(cut >= 1 && cut <= test.items(), "The cut must lie from 1 to %s, but is %s.", test.items(), cut);
        return test;
    }
}
