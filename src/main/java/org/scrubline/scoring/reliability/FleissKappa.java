package org.scrubline.scoring.reliability;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.TreeSet;
import org.scrubline.scoring.Ratio;
import org.scrubline.scoring.Require;

/**
 * Fleiss' kappa: agreement of m ratings a subject in named categories, the raters interchangeable.
 *
 * <p>Input: N subjects, at least 2, each with the same number m of ratings, at least 2. With x ratings of a subject in
 * category j and the pooled share p_j: observed = sum x (x - 1) / (N m (m - 1)), chance = sum p_j², kappa = (observed -
 * chance) / (1 - chance), at most 1. One category against the rest: 1 - sum x (m - x) / (N m (m - 1) p_j (1 - p_j)).
 * Standard errors are for a test of kappa = 0, in the corrected form of Fleiss, Nee and Landis; of one category it is
 * sqrt(2 / (N m (m - 1))). Kappa is empty when only one category was used. Conger's version takes chance agreement from
 * pairs of named raters and needs the ratings, not counts; with two raters it is Cohen's kappa.
 *
 * <p>Fleiss, Psychol Bull 1971;76:378, doi:10.1037/h0031619; Fleiss, Nee and Landis, Psychol Bull 1979;86:974,
 * doi:10.1037/0033-2909.86.5.974; Conger, Psychol Bull 1980;88:322, doi:10.1037/0033-2909.88.2.322.
 *
 * @param categories results for each category; from ratings numbers by value before names by alphabet, from counts as
 *     given
 * @param observed mean share of agreeing pairs, 0 to 1
 * @param chance agreement of raters who use the pooled shares at random, above 0, at most 1
 * @param kappa the coefficient; empty when chance agreement is complete
 * @param nullError its standard error when kappa is 0; empty with kappa
 * @param conger kappa with chance agreement from pairs of raters; empty from counts, and when that agreement is
 *     complete
 */
public record FleissKappa(
        List<Category> categories,
        double observed,
        double chance,
        OptionalDouble kappa,
        OptionalDouble nullError,
        OptionalDouble conger) {

    /**
     * One category against the rest.
     *
     * @param label its name
     * @param share of all ratings, 0 to 1
     * @param kappa agreement on it; empty when nobody or everybody used it
     * @param z kappa over its null error; empty with kappa
     */
    public record Category(String label, double share, OptionalDouble kappa, OptionalDouble z) {}

    /**
     * {@return the test of kappa = 0, kappa over its null error, standard normal for many subjects; empty when there is
     * none}
     */
    public OptionalDouble z() {
        return kappa.isEmpty() || nullError.isEmpty()
                ? OptionalDouble.empty()
                : Ratio.of(kappa.getAsDouble(), nullError.getAsDouble());
    }

    /**
     * From ratings.
     *
     * @param ratings one list a subject, one label a rater, raters in the same order
     * @return the coefficients, Conger's included
     * @throws IllegalArgumentException when there are fewer than 2 subjects or raters, or the lists differ in length
     */
    public static FleissKappa ofRatings(List<List<String>> ratings) {
        Require.that(ratings.size() >= 2, "Fleiss' kappa needs at least 2 subjects, but has %s.", ratings.size());
        int raters = ratings.get(0).size();
        List<String> labels = sortedLabels(ratings);
        int[][] counts = new int[ratings.size()][labels.size()];
        double[][] byRater = new double[raters][labels.size()];
        for (int s = 0; s < counts.length; s++) {
            List<String> row = ratings.get(s);
            Require.sameLength("The first subject", raters, "subject " + (s + 1), row.size());
            for (int r = 0; r < raters; r++) {
                int category = labels.indexOf(row.get(r));
                counts[s][category]++;
                byRater[r][category] += 1.0 / counts.length;
            }
        }
        FleissKappa plain = ofCounts(counts, labels);
        return new FleissKappa(
                plain.categories,
                plain.observed,
                plain.chance,
                plain.kappa,
                plain.nullError,
                conger(plain.observed, byRater));
    }

    private static List<String> sortedLabels(List<List<String>> ratings) {
        TreeSet<String> labels = new TreeSet<>(LabelOrder.NUMBERS_FIRST);
        ratings.forEach(labels::addAll);
        return List.copyOf(labels);
    }

    private static OptionalDouble conger(double observed, double[][] byRater) {
        int raters = byRater.length;
        double chance = 0;
        for (int c = 0; c < byRater[0].length; c++) {
            double sum = 0;
            double squares = 0;
            for (double[] rater : byRater) {
                sum += rater[c];
                squares += rater[c] * rater[c];
            }
            chance += (sum * sum - squares) / (raters * (raters - 1.0));
        }
        return 1 - chance < 1e-14 ? OptionalDouble.empty() : Ratio.of(observed - chance, 1 - chance);
    }

    /**
     * From counts of ratings.
     *
     * @param counts subjects x categories, 0 or more, every row with the same sum
     * @param labels one a category
     * @return the coefficients without Conger's
     * @throws IllegalArgumentException when there are fewer than 2 subjects or ratings a subject, a row has another
     *     length or sum, or a count is negative
     */
    public static FleissKappa ofCounts(int[][] counts, List<String> labels) {
        int raters = requireCounts(counts, labels);
        double pairs = counts.length * raters * (raters - 1.0);
        double observed = 0;
        double chance = 0;
        double products = 0;
        double skew = 0;
        List<Category> categories = new ArrayList<>();
        for (int c = 0; c < labels.size(); c++) {
            double share = 0;
            double disagreeing = 0;
            for (int[] row : counts) {
                share += row[c] / ((double) counts.length * raters);
                disagreeing += row[c] * (double) (raters - row[c]);
                observed += row[c] * (row[c] - 1.0) / pairs;
            }
            double product = share * (1 - share);
            chance += share * share;
            products += product;
            skew += product * (1 - 2 * share);
            OptionalDouble kappa =
                    product < 1e-14 ? OptionalDouble.empty() : OptionalDouble.of(1 - disagreeing / (pairs * product));
            OptionalDouble z = kappa.isEmpty() ? kappa : Ratio.finite(kappa.getAsDouble() / Math.sqrt(2 / pairs));
            categories.add(new Category(labels.get(c), share, kappa, z));
        }
        boolean undefined = products < 1e-14;
        double nullVariance = 2 / pairs * (products * products - skew) / (products * products);
        return new FleissKappa(
                List.copyOf(categories),
                observed,
                chance,
                undefined ? OptionalDouble.empty() : Ratio.of(observed - chance, 1 - chance),
                undefined ? OptionalDouble.empty() : Ratio.finite(Math.sqrt(Math.max(0, nullVariance))),
                OptionalDouble.empty());
    }

    private static int requireCounts(int[][] counts, List<String> labels) {
        Require.that(counts.length >= 2, "Fleiss' kappa needs at least 2 subjects, but has %s.", counts.length);
        int raters = 0;
        for (int s = 0; s < counts.length; s++) {
            Require.sameLength("The list of categories", labels.size(), "subject " + (s + 1), counts[s].length);
            int sum = 0;
            for (int count : counts[s]) {
                sum += Require.atLeast("A count of ratings", count, 0);
            }
            raters = s == 0 ? sum : raters;
            Require.that(sum == raters, "Every subject needs %s ratings, but subject %s has %s.", raters, s + 1, sum);
        }
        return Require.atLeast("The number of ratings a subject", raters, 2);
    }
}
