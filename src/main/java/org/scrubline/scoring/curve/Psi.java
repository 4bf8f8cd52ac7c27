package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * The population parameters of the model, all in logits. Standard deviations are of normal distributions; the kernels
 * take at least 1e-4 for each, and at least 1e-9 for the walk between two cases, so a 0 stands for a term left out.
 *
 * @param thresholds τ_2..τ_K, rising: level at which "k or better" has chance ½ on a step of difficulty 0
 * @param difficulty β of each step, sum 0 (not checked); larger = harder
 * @param complexity γ of each complexity covariate; larger = harder
 * @param gain μ_g, mean gain from no to unlimited experience
 * @param gapLoss φ, mean loss per month away beyond the free 60 days
 * @param levelSd σ_a of start levels
 * @param gainSd σ_g of individual gains
 * @param stepSd σ_d of a trainee's own step effects
 * @param assessmentSd σ_u of whole-assessment effects
 * @param severitySd σ_λ of supervisors' severities
 * @param pairSd σ_ν of trainee × supervisor effects
 * @param walk q, variance of the random walk per case
 * @param gapWalk q_g, extra variance per month away
 * @param range ρ per supervisor (empty = 0): above 0 the supervisor keeps to the middle levels
 * @param halo h per supervisor (empty = 0): log ratio of the supervisor's assessment effect to σ_u
 */
public record Psi(
        List<Double> thresholds,
        List<Double> difficulty,
        List<Double> complexity,
        double gain,
        double gapLoss,
        double levelSd,
        double gainSd,
        double stepSd,
        double assessmentSd,
        double severitySd,
        double pairSd,
        double walk,
        double gapWalk,
        List<Double> range,
        List<Double> halo) {

    private static final List<Double> SHIPPED_THRESHOLDS = List.of(-1.915849, -0.331251, 0.978190, 3.138172);
    private static final List<Double> SHIPPED_COMPLEXITY = List.of(0.6145, 0.4208, 0.4940);

    /**
     * Checks thresholds and variances and copies the lists.
     *
     * @param thresholds rising
     * @param difficulty not checked
     * @param complexity not checked
     * @param gain not checked
     * @param gapLoss not checked
     * @param levelSd 0 to below 1000
     * @param gainSd 0 to below 1000
     * @param stepSd 0 to below 1000
     * @param assessmentSd 0 to below 1000
     * @param severitySd 0 to below 1000
     * @param pairSd 0 to below 1000
     * @param walk 0 to below 1000
     * @param gapWalk 0 to below 1000
     * @param range not checked
     * @param halo not checked
     * @throws IllegalArgumentException when thresholds do not rise, or a standard deviation or variance is out of its
     *     range
     */
    public Psi {
        thresholds = List.copyOf(thresholds);
        difficulty = List.copyOf(difficulty);
        complexity = List.copyOf(complexity);
        range = List.copyOf(range);
        halo = List.copyOf(halo);
        for (int k = 1; k < thresholds.size(); k++) {
            if (!(thresholds.get(k) > thresholds.get(k - 1))) {
                throw new IllegalArgumentException("thresholds must rise, but are " + thresholds);
            }
        }
        for (double sd : new double[] {levelSd, gainSd, stepSd, assessmentSd, severitySd, pairSd, walk, gapWalk}) {
            if (!(sd >= 0 && sd < 1e3)) {
                throw new IllegalArgumentException("a standard deviation or variance must be 0 or more, but is " + sd);
            }
        }
    }

    /**
     * The shipped start values: a joint fit of eight simulated programmes (141 000 scores), to be replaced by a real
     * calibration. Step difficulties start at 0. Thresholds for other than five levels are spread evenly over the same
     * range; covariates beyond three start at the prior mean .4.
     *
     * @param levels number of levels K, 2 or more
     * @param steps number of steps
     * @param covariates number of complexity covariates
     * @return the parameters, without habits of supervisors
     */
    public static Psi shipped(int levels, int steps, int covariates) {
        return new Psi(
                shippedThresholds(levels),
                Collections.nCopies(steps, 0.0),
                shippedComplexity(covariates),
                3.8982,
                0.0979,
                0.5901,
                0.7811,
                0.4396,
                0.5645,
                0.6107,
                0.1553,
                0.00605,
                0.0110,
                List.of(),
                List.of());
    }

    static List<Double> shippedThresholds(int levels) {
        if (levels == SHIPPED_THRESHOLDS.size() + 1) {
            return SHIPPED_THRESHOLDS;
        }
        double low = SHIPPED_THRESHOLDS.get(0);
        double width = SHIPPED_THRESHOLDS.get(SHIPPED_THRESHOLDS.size() - 1) - low;
        Double[] spread = new Double[levels - 1];
        for (int k = 0; k < spread.length; k++) {
            spread[k] = low + width * (k + 0.5) / spread.length;
        }
        return List.of(spread);
    }

    private static List<Double> shippedComplexity(int covariates) {
        Double[] gamma = new Double[covariates];
        for (int x = 0; x < covariates; x++) {
            gamma[x] = x < SHIPPED_COMPLEXITY.size() ? SHIPPED_COMPLEXITY.get(x) : 0.4;
        }
        return List.of(gamma);
    }

    /** {@return the number of levels K} */
    public int levels() {
        return thresholds.size() + 1;
    }

    /**
     * {@return the level needed for chance ½ of "k or better" on a step of difficulty 0, in logits}
     *
     * @param k 2..K
     * @throws IndexOutOfBoundsException when it is not
     */
    public double threshold(int k) {
        return thresholds.get(k - 2);
    }

    /**
     * {@return the same parameters with these step difficulties}
     *
     * @param beta one a step, sum 0 (not checked)
     */
    public Psi withDifficulty(List<Double> beta) {
        return new Psi(
                thresholds,
                beta,
                complexity,
                gain,
                gapLoss,
                levelSd,
                gainSd,
                stepSd,
                assessmentSd,
                severitySd,
                pairSd,
                walk,
                gapWalk,
                range,
                halo);
    }

    /** The same parameters, one supervisor's habits copied to another place. */
    Psi withHabitsOf(int supervisor, int place) {
        return new Psi(
                thresholds,
                difficulty,
                complexity,
                gain,
                gapLoss,
                levelSd,
                gainSd,
                stepSd,
                assessmentSd,
                severitySd,
                pairSd,
                walk,
                gapWalk,
                copied(range, supervisor, place),
                copied(halo, supervisor, place));
    }

    private static List<Double> copied(List<Double> habits, int from, int to) {
        List<Double> longer = new ArrayList<>(habits);
        if (to < longer.size()) {
            longer.set(to, longer.get(from));
        }
        return longer;
    }

    /** The parameters with the terms left out set to nothing. */
    Psi restrictedTo(Terms terms) {
        return new Psi(
                thresholds,
                difficulty,
                complexity,
                terms.growth() ? gain : 0,
                terms.gap() ? gapLoss : 0,
                levelSd,
                terms.growth() ? gainSd : 0,
                terms.traineeStep() ? stepSd : 0,
                terms.assessment() ? assessmentSd : 0,
                severitySd,
                terms.traineeSupervisor() ? pairSd : 0,
                terms.chain() ? walk : 0,
                terms.chain() && terms.gap() ? gapWalk : 0,
                range,
                halo);
    }
}
