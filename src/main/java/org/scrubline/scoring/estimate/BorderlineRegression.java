package org.scrubline.scoring.estimate;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.scrubline.scoring.Distributions;
import org.scrubline.scoring.Ratio;
import org.scrubline.scoring.Require;

/**
 * Standard setting by borderline regression: the checklist score is regressed on the global rating, and the cut is the
 * expected score at the rating that says "borderline".
 *
 * <p>With n candidates, ratings x and scores y: slope = Sxy / Sxx, cut = mean(y) + slope (b - mean(x)), residual
 * deviation σ = sqrt(residual sum of squares / (n - 2)), standard error of the cut = σ sqrt(1 / n + (b - mean(x))² /
 * Sxx), interval = cut ± t(n - 2) x standard error. It is the interval of the expected score, not of a single one. The
 * borderline rating b need not be among the ratings, nor between them; a cut outside them is extrapolated.
 *
 * <p>The method is common practice in performance examinations, no single source.
 *
 * @param intercept of the line, expected score at a rating of 0
 * @param slope of the line, points a rating
 * @param determination R², 0 to 1; empty when the scores do not vary
 * @param residualDeviation standard deviation around the line, in points
 * @param cut expected score at the borderline rating, in points
 * @param standardError of the cut, in points
 * @param interval of the cut, in points
 * @param groupMean mean score of those rated exactly borderline, the older method; empty when nobody is
 * @param groupMedian their median (definition {@link Quantile#R7}); empty when nobody is
 * @param groupSize how many they are
 * @param belowCut candidates, of all, with a score below the cut
 */
public record BorderlineRegression(
        double intercept,
        double slope,
        OptionalDouble determination,
        double residualDeviation,
        double cut,
        double standardError,
        Interval interval,
        OptionalDouble groupMean,
        OptionalDouble groupMedian,
        int groupSize,
        int belowCut) {

    /**
     * The line and its cut.
     *
     * @param ratings global rating of each candidate, at least 3, not all equal
     * @param scores checklist score of each candidate, in the same order
     * @param borderline the rating that says "borderline"
     * @param confidence of the interval, strictly between 0 and 1
     * @return cut and interval
     * @throws IllegalArgumentException when the lists are short, differ in length or hold something that is no number,
     *     when all ratings are equal, or the confidence is out of its range
     */
    public static BorderlineRegression of(double[] ratings, double[] scores, double borderline, double confidence) {
        requireCandidates(ratings, scores, borderline);
        double n = ratings.length;
        double meanRating = Arrays.stream(ratings).average().orElse(0);
        double meanScore = Arrays.stream(scores).average().orElse(0);
        double xx = products(ratings, meanRating, ratings, meanRating);
        Require.that(xx > 0 && vary(ratings), "All global ratings are equal, so no line can be fitted.");
        double xy = products(ratings, meanRating, scores, meanScore);
        double yy = products(scores, meanScore, scores, meanScore);
        double slope = xy / xx;
        double residual = IntStream.range(0, ratings.length)
                .mapToDouble(i -> scores[i] - meanScore - slope * (ratings[i] - meanRating))
                .map(e -> e * e)
                .sum();
        double sigma = Math.sqrt(residual / (n - 2));
        double cut = meanScore + slope * (borderline - meanRating);
        double error = sigma * Math.sqrt(1 / n + (borderline - meanRating) * (borderline - meanRating) / xx);
        double half =
                error * Distributions.tQuantile(1 - (1 - Require.insideUnit("The confidence", confidence)) / 2, n - 2);
        double[] group = IntStream.range(0, ratings.length)
                .filter(i -> ratings[i] == borderline)
                .mapToDouble(i -> scores[i])
                .toArray();
        return new BorderlineRegression(
                meanScore - slope * meanRating,
                slope,
                vary(scores) ? Ratio.of(yy - residual, yy) : OptionalDouble.empty(),
                sigma,
                cut,
                error,
                new Interval(cut - half, cut + half),
                Arrays.stream(group).average(),
                group.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(Quantile.R7.of(0.5, group)),
                group.length,
                (int) Arrays.stream(scores).filter(score -> score < cut).count());
    }

    private static void requireCandidates(double[] ratings, double[] scores, double borderline) {
        Require.sameLength("The list of global ratings", ratings.length, "the list of checklist scores", scores.length);
        Require.finite("The list of global ratings", ratings, 3);
        Require.finite("The list of checklist scores", scores, 3);
        Require.finite("The borderline rating", borderline);
    }

    /** By the values themselves: the mean of equal ones may be off by rounding, and with it their sum of squares. */
    private static boolean vary(double[] values) {
        return Arrays.stream(values).distinct().count() > 1;
    }

    private static double products(double[] x, double meanX, double[] y, double meanY) {
        return IntStream.range(0, x.length)
                .mapToDouble(i -> (x[i] - meanX) * (y[i] - meanY))
                .sum();
    }
}
