package org.scrubline.scoring.estimate;

import java.util.Arrays;
import java.util.List;
import org.scrubline.scoring.Distributions;
import org.scrubline.scoring.Require;

/**
 * Standard setting by a panel: each judge says for each item the probability that a borderline candidate does it; a
 * judge's cut is the sum, the panel's cut the mean of the judges'.
 *
 * <p>The interval treats the judges as a sample, with t on their number minus 1. Angoff, in Educational Measurement, 2nd
 * ed. 1971. How far the judges agree is an intraclass correlation of the items by judges.
 *
 * @param cut mean of the judges' sums
 * @param percent of the items
 * @param deviation standard deviation of the judges' sums
 * @param standardError of the cut
 * @param interval of the cut
 * @param judges the judges' own sums
 */
public record AngoffPanel(
        double cut, double percent, double deviation, double standardError, Interval interval, List<Double> judges) {

    /** From judges x items, probabilities from 0 to 1, at least 2 judges and 1 item. */
    public static AngoffPanel of(double[][] ratings, double confidence) {
        Require.table("The table of judgements", ratings, 2, 1);
        for (double[] judge : ratings) {
            for (double rating : judge) {
                Require.probability("A judgement", rating);
            }
        }
        double[] sums = Arrays.stream(ratings)
                .mapToDouble(judge -> Arrays.stream(judge).sum())
                .toArray();
        double n = sums.length;
        double cut = Arrays.stream(sums).average().orElse(0);
        double deviation =
                Math.sqrt(Arrays.stream(sums).map(s -> (s - cut) * (s - cut)).sum() / (n - 1));
        double error = deviation / Math.sqrt(n);
        double half =
                error * Distributions.tQuantile(1 - (1 - Require.insideUnit("The confidence", confidence)) / 2, n - 1);
        return new AngoffPanel(
                cut,
                100 * cut / ratings[0].length,
                deviation,
                error,
                new Interval(cut - half, cut + half),
                Arrays.stream(sums).boxed().toList());
    }
}
