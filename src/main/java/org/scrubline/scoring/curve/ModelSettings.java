package org.scrubline.scoring.curve;

/**
 * What the model holds and how it is fitted.
 *
 * @param terms random terms
 * @param kappa cases after which 63 % of the gain is reached, above 0; 20 was best of 10, 15, 20, 30 and 40 in
 *     calibration
 * @param supervisorRange true to let supervisors differ in how widely they use the levels
 * @param supervisorHalo true to let supervisors differ in the size of their whole-assessment effect
 * @param priors priors on the population parameters
 */
public record ModelSettings(
        Terms terms, double kappa, boolean supervisorRange, boolean supervisorHalo, PsiPriors priors) {

    /**
     * Checks kappa.
     *
     * @param terms not checked
     * @param kappa above 0, below 1e6
     * @param supervisorRange either
     * @param supervisorHalo either; without effect when the terms leave the whole-assessment effect out
     * @param priors not checked
     * @throws IllegalArgumentException when kappa is out of its range
     */
    public ModelSettings {
        if (!(kappa > 0 && kappa < 1e6)) {
            throw new IllegalArgumentException("kappa must be above 0, but is " + kappa);
        }
    }

    /**
     * {@return the full model with the default priors}
     *
     * @param levels number of levels K, 2 or more
     */
    public static ModelSettings standard(int levels) {
        return new ModelSettings(Terms.FULL, 20, true, true, PsiPriors.defaults(levels));
    }
}
