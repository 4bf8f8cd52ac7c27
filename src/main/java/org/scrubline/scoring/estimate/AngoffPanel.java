package org.scrubline.scoring.estimate;

import java.util.Arrays;
import java.util.List;
import org.scrubline.scoring.Distributions;
import org.scrubline.scoring.Require;

/**
 * Standard setting by a panel: each judge says for each item the probability that a borderline candidate does it; a
 * judge's cut is the sum, the panel's cut the mean of the judges'.
 *
 * <p>With J judges of sums s: cut = mean(s), deviation² = sum((s - cut)²) / (J - 1), standard error = deviation /
 * sqrt(J), interval = cut ± t(J - 1) x standard error: the judges are taken as a sample. Judges who agree exactly leave
 * an interval without width. The interval is not held inside 0 to the number of items.
 *
 * <p>Angoff, in Educational Measurement, 2nd ed. 1971. How far the judges agree is an intraclass correlation of the
 * items by judges.
 *
 * @param cut mean of the judges' sums, in items, 0 to their number
 * @param percent the cut in per cent of the items, 0 to 100
 * @param deviation standard deviation of the judges' sums, in items
 * @param standardError of the cut, in items
 * @param interval of the cut, in items
 * @param judges the judges' own sums, in the order of the rows
 */
public record AngoffPanel(
        double cut, double percent, double deviation, double standardError, Interval interval, List<Double> judges) {

    /**
     * The panel's cut.
     *
     * @param ratings judges x items, probabilities from 0 to 1; at least 2 judges and 1 item
     * @param confidence of the interval, strictly between 0 and 1
     * @return cut and interval
     * @throws IllegalArgumentException when the table is too small, not rectangular or holds something else than
     *     probabilities, or the confidence is out of its range
     */
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
