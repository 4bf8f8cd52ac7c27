package org.scrubline.scoring.ordinal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.scrubline.scoring.QuasiNewton;
import org.scrubline.scoring.Require;

/**
 * The many-facet rating scale model: log odds of category k against k - 1 = ability - item - severity of the rater -
 * step k, by marginal maximum likelihood with normal abilities of mean 0.
 *
 * <p>Severities and steps sum to 0; a positive severity is a rater who scores lower than colleagues. Categories are the
 * whole numbers from the lowest to the highest score, and every one must occur; persons need not be scored by every
 * rater or on every item. The integral is a sum over equally spaced nodes over 8 standard deviations on either side,
 * which converges faster than any power of their number once they are denser than a person's likelihood; nodes are
 * doubled until the deviance moves by less than 1e-6, since with many ratings a person a coarse grid gives another
 * answer. The fit is refused when a parameter, or the logarithm of the standard deviation of abilities, passes 15 in
 * size. Estimates agree with independent programs to about 1e-6.
 *
 * <p>Linacre, Many-Facet Rasch Measurement, 1989; Andrich, Psychometrika 1978;43:561, doi:10.1007/BF02293814.
 *
 * @param deviance minus twice the log-likelihood, constants included
 * @param abilityVariance variance of the persons, in squared logits, above 0
 * @param items difficulty of each item in logits, larger = harder, by name
 * @param raters severity of each rater in logits, by name, sum 0
 * @param steps step parameters in logits, sum 0, the first between the two lowest categories; need not rise
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
     * @param score the category, any whole number
     */
    public record Rating(String person, String rater, String item, int score) {}

    /**
     * The fit.
     *
     * @param ratings at least two persons, two raters and two categories
     * @param nodes of the first grid, 11 to 8000
     * @return the estimates
     * @throws IllegalArgumentException when there are fewer, a category in between does not occur, nodes are below 11,
     *     no grid up to 8000 nodes is dense enough, or the estimates run away or do not come to rest
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
}
