package org.scrubline.scoring.mixed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.scrubline.scoring.QuasiNewton;
import org.scrubline.scoring.Require;
import org.scrubline.scoring.reliability.Projection;

/**
 * Variance components of a score by restricted maximum likelihood: a mean, random effects of any number of facets and
 * of their combinations, crossed or nested, balanced or not, and a residual. On balanced data with positive components
 * the result equals the analysis of variance.
 *
 * <p>Components cannot be negative; one that the data push below 0 ends at 0. Algorithm: the profiled criterion with a
 * sparse Cholesky factor, minimised by BFGS over the ratios of standard deviations from a start of 1 each, a ratio that
 * ends near 0 checked at larger ones; components agree with independent programs to about 1e-6.
 *
 * <p>Bates, Maechler, Bolker and Walker, J Stat Softw 2015;67(1), doi:10.18637/jss.v067.i01 (profiled criterion);
 * Brennan, Generalizability Theory, 2001, doi:10.1007/978-1-4757-3456-0 (decision studies).
 *
 * @param variances of each term, 0 or more, in the order given; a term is the list of its facets
 * @param residual variance, above 0
 * @param intercept mean of a score
 * @param interceptError its standard error
 * @param criterion minus twice the restricted log-likelihood at the estimates, constants included
 */
public record CrossedEffects(
        Map<List<String>, Double> variances,
        double residual,
        double intercept,
        double interceptError,
        double criterion) {
    private static final double STEP = 1e-3;
    private static final double TOLERANCE = 1e-6;
    /** A ratio of variances below this is 0 with the last digits of the search. */
    private static final double NOTHING = 1e-9;

    /**
     * The fit.
     *
     * @param y scores, at least 3, not all equal
     * @param facets level names of each facet, one for each score, by facet; may hold facets no term uses
     * @param terms random terms, each one or more facets; no term twice, none that tells every score apart
     * @return the components
     * @throws IllegalArgumentException when scores are too few, all equal or no numbers, a facet is missing or has
     *     another length, a term is given twice or has one level or one for every score, there is no term, or the fit
     *     does not converge
     */
    public static CrossedEffects of(double[] y, Map<String, List<String>> facets, List<List<String>> terms) {
        Require.finite("The list of scores", y, 3);
        Require.notEmpty("The list of random terms", terms);
        Require.that(
                Arrays.stream(y).distinct().count() > 1, "All scores are equal, so there is no variance to divide.");
        List<int[]> levels = new ArrayList<>();
        int[] sizes = new int[terms.size()];
        Set<Set<String>> seen = new LinkedHashSet<>();
        for (int t = 0; t < sizes.length; t++) {
            List<String> term = Require.notEmpty("A random term", terms.get(t));
            Require.that(seen.add(Set.copyOf(term)), "The random term %s is given twice.", name(term));
            int[] codes = codes(y.length, facets, term);
            sizes[t] = Arrays.stream(codes).max().orElse(0) + 1;
            requireUsable(term, sizes[t], y.length);
            levels.add(codes);
        }
        return fit(new ProfiledLikelihood(y, levels, sizes), terms);
    }

    private static void requireUsable(List<String> term, int size, int scores) {
        Require.that(size > 1, "The facet %s has only one level.", name(term));
        Require.that(
                size < scores,
                "The term %s has a level for every score, so it cannot be told from the residual.",
                name(term));
    }

    /**
     * {@return the name of a term, its facets joined by colons}
     *
     * @param term its facets, in their order
     */
    public static String name(List<String> term) {
        return String.join(":", term);
    }

    private static int[] codes(int n, Map<String, List<String>> facets, List<String> term) {
        Map<List<String>, Integer> known = new HashMap<>();
        int[] codes = new int[n];
        for (int i = 0; i < n; i++) {
            int row = i;
            List<String> level = term.stream()
                    .map(facet -> {
                        List<String> column = facets.get(facet);
                        if (column == null) {
                            throw new IllegalArgumentException("There is no column for the facet " + facet + ".");
                        }
                        Require.sameLength("The list of scores", n, "the facet " + facet, column.size());
                        return column.get(row);
                    })
                    .collect(Collectors.toList());
            codes[i] = known.computeIfAbsent(level, key -> known.size());
        }
        return codes;
    }

    private static CrossedEffects fit(ProfiledLikelihood likelihood, List<List<String>> terms) {
        double[] start = new double[terms.size()];
        Arrays.fill(start, 1);
        QuasiNewton.Objective objective =
                QuasiNewton.differentiated(ratios -> likelihood.at(ratios).criterion(), STEP);
        double[] ratios = search(objective, start);
        ProfiledLikelihood.Fit fit = likelihood.at(ratios);
        Map<List<String>, Double> variances = new LinkedHashMap<>();
        for (int t = 0; t < ratios.length; t++) {
            double ratio = ratios[t] * ratios[t];
            variances.put(List.copyOf(terms.get(t)), ratio < NOTHING ? 0 : ratio * fit.residualVariance());
        }
        return new CrossedEffects(
                variances, fit.residualVariance(), fit.intercept(), fit.interceptError(), fit.criterion());
    }

    private static double[] search(QuasiNewton.Objective objective, double[] start) {
        int[] all = IntStream.range(0, start.length).toArray();
        try {
            return QuasiNewton.minimise(objective, start, TOLERANCE, all).toArray();
        } catch (IllegalArgumentException restless) {
            throw new IllegalArgumentException(
                    "The fit does not converge; the random terms may explain every score, or two may say the same.",
                    restless);
        }
    }

    /**
     * A decision study: the mean of one object over the planned numbers of conditions.
     *
     * <p>A term that holds only the object is its universe score; with other facets it is relative error, divided by
     * their numbers; a term without the object enters the absolute error only. The residual is relative error, divided
     * by the numbers of its facets.
     *
     * @param object the facet to be measured
     * @param residualFacets facets over which the residual averages; the object among them counts once
     * @param numbers conditions planned of each other facet of a term or of the residual, at least 1
     * @return universe score and errors, in squared units of the scores
     * @throws IllegalArgumentException when there is no term for the object alone, a number is missing or below 1
     */
    public Projection projected(String object, List<String> residualFacets, Map<String, Integer> numbers) {
        double universe = 0;
        double relative = residual / product(residualFacets, object, numbers);
        double absolute = 0;
        boolean measured = false;
        for (Map.Entry<List<String>, Double> term : variances.entrySet()) {
            double share = term.getValue() / product(term.getKey(), object, numbers);
            if (!term.getKey().contains(object)) {
                absolute += share;
            } else if (term.getKey().size() == 1) {
                universe += share;
                measured = true;
            } else {
                relative += share;
            }
        }
        Require.that(measured, "The model has no term for %s alone, so it cannot be measured.", object);
        return new Projection(universe, relative, relative + absolute);
    }

    private static double product(List<String> facets, String object, Map<String, Integer> numbers) {
        double product = 1;
        for (String facet : facets) {
            if (!facet.equals(object)) {
                Integer number = numbers.get(facet);
                Require.that(number != null, "The decision study gives no number for the facet %s.", facet);
                product *= number == null ? 1 : Require.atLeast("The number planned for " + facet, number, 1);
            }
        }
        return product;
    }
}
