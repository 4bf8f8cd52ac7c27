package org.scrubline.scoring.ordinal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.scrubline.scoring.QuasiNewton;
import org.scrubline.scoring.Require;

/**
 * The many-facet rating scale model: log odds of category k against k - 1 = ability - item - severity of the rater -
 * step k, by marginal maximum likelihood with normal abilities of mean 0.
 *
 * <p>Severities and steps sum to 0; a positive severity is a rater who scores lower than colleagues. Categories are the
 * whole numbers from the lowest to the highest score, and every one must occur. The integral is a sum over equally spaced
 * nodes over 8 standard deviations on either side, which converges faster than any power of their number once they are
 * denser than a person's likelihood; nodes are doubled until the deviance moves by less than 1e-6, since with many
 * ratings a person a coarse grid gives another answer. Estimates agree with independent programs to about 1e-6.
 *
 * <p>Linacre, Many-Facet Rasch Measurement, 1989; Andrich, Psychometrika 1978;43:561, doi:10.1007/BF02293814.
 *
 * @param deviance minus twice the log-likelihood
 * @param abilityVariance variance of the persons
 * @param items difficulty of each item
 * @param raters severity of each rater
 * @param steps step parameters, the first between the two lowest categories
 * @param nodes of the grid that was dense enough
 */
public record ManyFacetRasch(
        double deviance,
        double abilityVariance,
        Map<String, Double> items,
        Map<String, Double> raters,
        List<Double> steps,
        int nodes) {
    private static final int MOST_NODES = 8000;
    private static final double FARTHEST = 15;
    private static final double DENSE_ENOUGH = 1e-6;
    private static final double TOLERANCE = 1e-7;

    /**
     * One score.
     *
     * @param person who was scored
     * @param rater who scored
     * @param item what was scored
     * @param score the category, a whole number
     */
    public record Rating(String person, String rater, String item, int score) {}

    /**
     * The fit.
     *
     * @param ratings at least two persons, two raters and two categories
     * @param nodes of the first grid, at least 11
     */
    public static ManyFacetRasch of(List<Rating> ratings, int nodes) {
        Require.atLeast("The number of nodes", nodes, 11);
        FacetDesign design = new FacetDesign(ratings);
        double[] start = new double[design.parameters()];
        int dense = nodes;
        while (dense <= MOST_NODES) {
            QuasiNewton.Minimum minimum = QuasiNewton.minimise(new FacetLikelihood(design, dense), start, TOLERANCE);
            start = minimum.toArray();
            double doubled = new FacetLikelihood(design, 2 * dense - 1).value(start, new double[start.length]);
            if (Math.abs(doubled - minimum.value()) < DENSE_ENOUGH) {
                return result(design, start, minimum.value(), dense);
            }
            dense = 2 * dense - 1;
        }
        throw new IllegalArgumentException("The ratings a person are too many for a grid of " + MOST_NODES + " nodes.");
    }

    private static ManyFacetRasch result(FacetDesign design, double[] at, double deviance, int nodes) {
        double deviation = Math.exp(at[at.length - 1]);
        Require.that(
                Arrays.stream(at).allMatch(parameter -> Math.abs(parameter) < FARTHEST),
                "The estimates run away; a rater or an item may have scores at one end of the scale only.");
        List<Double> steps = new ArrayList<>();
        for (int k = 1; k <= design.steps(); k++) {
            steps.add(design.step(at, k));
        }
        Map<String, Double> items = new LinkedHashMap<>();
        for (int i = 0; i < design.items().size(); i++) {
            items.put(design.items().get(i), at[i]);
        }
        Map<String, Double> raters = new LinkedHashMap<>();
        for (int r = 0; r < design.raters().size(); r++) {
            raters.put(design.raters().get(r), design.severity(at, r));
        }
        return new ManyFacetRasch(deviance, deviation * deviation, items, raters, List.copyOf(steps), nodes);
    }

    /** Ratings as indices, and where each parameter lies: items, all raters but the last, all steps but the last, log SD. */
    static final class FacetDesign {
        private final List<String> items;
        private final List<String> raters;
        private final int steps;
        private final int combinations;
        /** For each person the combination of rater and item, and the score above the lowest, of each rating. */
        final List<int[][]> persons = new ArrayList<>();

        FacetDesign(List<Rating> ratings) {
            Require.notEmpty("The list of ratings", ratings);
            items = distinct(ratings.stream().map(Rating::item).toList());
            raters = distinct(ratings.stream().map(Rating::rater).toList());
            List<String> names = distinct(ratings.stream().map(Rating::person).toList());
            Require.that(names.size() >= 2, "The model needs at least 2 persons, but has %s.", names.size());
            Require.that(raters.size() >= 2, "The model needs at least 2 raters, but has %s.", raters.size());
            int[] scores =
                    ratings.stream().mapToInt(Rating::score).distinct().sorted().toArray();
            Require.that(scores.length >= 2, "All scores are in one category, so there is nothing to model.");
            steps = scores[scores.length - 1] - scores[0];
            Require.that(
                    steps == scores.length - 1,
                    "Every category between the lowest and the highest score must occur; %s of %s do.",
                    scores.length,
                    steps + 1);
            combinations = raters.size() * items.size();
            Map<String, List<int[]>> byPerson = new LinkedHashMap<>();
            names.forEach(name -> byPerson.put(name, new ArrayList<>()));
            for (Rating rating : ratings) {
                int combination = raters.indexOf(rating.rater()) * items.size() + items.indexOf(rating.item());
                byPerson.computeIfAbsent(rating.person(), name -> new ArrayList<>())
                        .add(new int[] {combination, rating.score() - scores[0]});
            }
            byPerson.values().forEach(rows -> persons.add(rows.toArray(int[][]::new)));
        }

        private static List<String> distinct(List<String> names) {
            return List.copyOf(new TreeSet<>(names));
        }

        List<String> items() {
            return items;
        }

        List<String> raters() {
            return raters;
        }

        int steps() {
            return steps;
        }

        int combinations() {
            return combinations;
        }

        int itemOf(int combination) {
            return combination % items.size();
        }

        int raterOf(int combination) {
            return combination / items.size();
        }

        int parameters() {
            return firstStep() + steps;
        }

        int firstStep() {
            return items.size() + raters.size() - 1;
        }

        double severity(double[] at, int rater) {
            return lastOfZeroSum(at, items.size(), raters.size(), rater);
        }

        double step(double[] at, int k) {
            return lastOfZeroSum(at, firstStep(), steps, k - 1);
        }

        private static double lastOfZeroSum(double[] at, int first, int count, int index) {
            return index < count - 1
                    ? at[first + index]
                    : 0.0 - Arrays.stream(at, first, first + count - 1).sum();
        }
    }
}
