package org.scrubline.scoring.curve;

/**
 * What the model holds and how it is fitted.
 *
 * @param terms random terms
 * @param kappa cases after which 63 % of the gain is reached; 20 was best of 10..40 in calibration
 * @param supervisorRange true to let supervisors differ in how widely they use the levels
 * @param supervisorHalo true to let supervisors differ in the size of their whole-assessment effect
 * @param priors priors on the population parameters
 */
public record ModelSettings(
        Terms terms, double kappa, boolean supervisorRange, boolean supervisorHalo, PsiPriors priors) {

    public ModelSettings {
        if (!(kappa > 0 && kappa < 1e6)) {
            throw new IllegalArgumentException("kappa must be above 0, but is " + kappa);
        }
    }

    /** The full model with the default priors, for K levels. */
    public static ModelSettings standard(int levels) {
        return new ModelSettings(Terms.FULL, 20, true, true, PsiPriors.defaults(levels));
    }
}
