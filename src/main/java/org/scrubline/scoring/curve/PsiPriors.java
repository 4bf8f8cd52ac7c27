package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Normal priors on the population parameters, by the group names {@code tau, beta, gamma, mu_g, phi, ls_a, ls_g, ls_d,
 * ls_u, ls_l, ls_n, lq, lqg, rho, hal}. {@code tau} is on (τ_2, log gaps), {@code ls_*}, {@code lq}, {@code lqg} on
 * logarithms of standard deviations and walk variances, {@code beta} on every difficulty, the last one included.
 *
 * @param byGroup prior of each group; a group without one is free
 */
public record PsiPriors(Map<String, Normal> byGroup) {

    /**
     * Normal laws of the entries of a group, entry by entry.
     *
     * @param means of the entries, in their order; the last one stands for all that follow
     * @param sds standard deviations above 0, likewise
     */
    public record Normal(List<Double> means, List<Double> sds) {
        /**
         * Checks and copies the lists.
         *
         * @param means at least one
         * @param sds at least one, each above 0
         * @throws IllegalArgumentException when a list is empty or a standard deviation is not above 0
         */
        public Normal {
            means = List.copyOf(means);
            sds = List.copyOf(sds);
            if (means.isEmpty() || sds.isEmpty() || sds.stream().anyMatch(sd -> !(sd > 0))) {
                throw new IllegalArgumentException("a prior needs a mean and a standard deviation above 0");
            }
        }

        double mean(int i) {
            return means.get(Math.min(i, means.size() - 1));
        }

        double sd(int i) {
            return sds.get(Math.min(i, sds.size() - 1));
        }
    }

    /**
     * Copies the map.
     *
     * @param byGroup copied; names are not checked, one the model does not know has no effect
     */
    public PsiPriors {
        byGroup = Map.copyOf(byGroup);
    }

    /** {@return no priors: plain maximum likelihood; only safe with much well-connected data} */
    public static PsiPriors none() {
        return new PsiPriors(Map.of());
    }

    /**
     * The default priors of {@code docs/model.md}, section 5. The one on thresholds is needed: with free thresholds a
     * trainee who only ever got the top level drifts to a level without bound.
     *
     * @param levels number of levels K, 2 or more
     * @return a prior for every group
     */
    public static PsiPriors defaults(int levels) {
        Map<String, Normal> priors = new LinkedHashMap<>();
        double[] tau = PsiLayout.logGaps(Psi.shippedThresholds(levels));
        List<Double> centre = new ArrayList<>();
        List<Double> width = new ArrayList<>();
        for (int k = 0; k < tau.length; k++) {
            centre.add(tau[k]);
            width.add(k == 0 ? 1.0 : 0.4);
        }
        priors.put("tau", new Normal(centre, width));
        priors.put("beta", normal(0, 1));
        priors.put("gamma", normal(0.4, 0.5));
        priors.put("mu_g", normal(3.5, 1.5));
        priors.put("phi", normal(0.2, 0.2));
        priors.put("ls_a", normal(Math.log(0.6), 0.5));
        priors.put("ls_g", normal(Math.log(0.8), 0.5));
        priors.put("lq", normal(Math.log(0.01), 1));
        priors.put("lqg", normal(Math.log(0.05), 1));
        priors.put("ls_d", normal(Math.log(0.4), 0.4));
        priors.put("ls_u", normal(Math.log(0.5), 0.4));
        priors.put("ls_l", normal(Math.log(0.5), 0.4));
        priors.put("ls_n", normal(Math.log(0.15), 0.5));
        priors.put("rho", normal(0, 0.2));
        priors.put("hal", normal(0, 0.3));
        return new PsiPriors(priors);
    }

    /**
     * {@return one law for every entry}
     *
     * @param mean of each entry
     * @param sd standard deviation of each entry, above 0
     * @throws IllegalArgumentException when it is not
     */
    public static Normal normal(double mean, double sd) {
        return new Normal(List.of(mean), List.of(sd));
    }
}
