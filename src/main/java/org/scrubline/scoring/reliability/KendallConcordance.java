package org.scrubline.scoring.reliability;

import java.util.Arrays;
import java.util.OptionalDouble;
import org.scrubline.scoring.Distributions;
import org.scrubline.scoring.Require;

/**
 * Kendall's coefficient of concordance W, corrected for ties: how alike m raters rank n subjects, 0 to 1.
 *
 * <p>W = 12 S / (m² (n³ - n) - m T) with mean ranks for ties, S the squared distances of the rank sums from their mean,
 * and T the sum of t³ - t over all tied groups of t of all raters. The test m (n - 1) W is chi-squared with n - 1
 * degrees of freedom for large n only. Empty when every rater ties all subjects.
 *
 * <p>Kendall and Babington Smith, Ann Math Stat 1939;10:275, doi:10.1214/aoms/1177732186.
 *
 * @param w the coefficient; empty when no rater tells subjects apart
 * @param chiSquared the test statistic, 0 or more; empty with w
 * @param degrees of freedom, n - 1
 * @param p upper tail, 0 to 1; empty with w
 */
public record KendallConcordance(OptionalDouble w, OptionalDouble chiSquared, int degrees, OptionalDouble p) {

    /**
     * The coefficient of a table.
     *
     * @param ratings subjects x raters, at least 2 of each; only their order within a rater counts
     * @return coefficient and test
     * @throws IllegalArgumentException when the table is too small, not rectangular or holds something that is no
     *     number
     */
    public static KendallConcordance of(double[][] ratings) {
        Require.table("The table of ratings", ratings, 2, 2);
        double n = ratings.length;
        double m = ratings[0].length;
        double[] sums = new double[ratings.length];
        double ties = 0;
        for (int rater = 0; rater < ratings[0].length; rater++) {
            int column = rater;
            double[] scores =
                    Arrays.stream(ratings).mapToDouble(row -> row[column]).toArray();
            for (int s = 0; s < sums.length; s++) {
                double rank = rank(scores, scores[s]);
                sums[s] += rank;
                ties += TwoWayTable.square(timesIn(scores, scores[s])) - 1;
            }
        }
        double spread = TwoWayTable.squaresAround(sums, m * (n + 1) / 2);
        double most = m * m * (n * n * n - n) - m * ties;
        if (most <= 0) {
            return new KendallConcordance(
                    OptionalDouble.empty(), OptionalDouble.empty(), sums.length - 1, OptionalDouble.empty());
        }
        double w = 12 * spread / most;
        double chiSquared = m * (n - 1) * w;
        return new KendallConcordance(
                OptionalDouble.of(w),
                OptionalDouble.of(chiSquared),
                sums.length - 1,
                OptionalDouble.of(Distributions.chiSquaredUpper(chiSquared, n - 1)));
    }

    private static double rank(double[] scores, double score) {
        double below = Arrays.stream(scores).filter(s -> s < score).count();
        return below + (timesIn(scores, score) + 1) / 2;
    }

    private static double timesIn(double[] scores, double score) {
        return Arrays.stream(scores).filter(s -> s == score).count();
    }
}
