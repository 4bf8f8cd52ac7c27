package org.scrubline.scoring.curve;

import java.util.List;

/**
 * The population parameters laid out for the kernels at one point of the search: flat arrays, no objects. Supervisors
 * are those of the table; beyond the ends of {@code range} and {@code halo} a supervisor has 0.
 */
final class ModelPoint {

    /** Standard deviation that stands for a term left out, and the least one of a term kept. */
    private static final double LEAST_SD = 1e-4;

    private static final double LEAST_WALK = 1e-9;
    private static final double LEAST_STEP = 1e-3;

    final int levels;
    final int stride;
    final double kappa;
    final double[] beta;
    final double[] gamma;
    final double gain;
    final double gapLoss;
    final double levelVariance;
    final double gainVariance;
    final double stepVariance;
    final double pairVariance;
    final double severityVariance;
    final double walk;
    final double gapWalk;

    /** τ_2..τ_K and their mean, before the supervisor's range. */
    final double[] tau;

    final double tauMean;

    /** Per supervisor: exp of the threshold of level k at {@code [v * stride + k]}, k = 2..K; 0 at k = 1. */
    final double[] expThreshold;

    /** Per supervisor: the threshold itself, k = 2..K. */
    final double[] threshold;

    /** Variance of the whole-assessment effect, of a usual supervisor and per supervisor. */
    final double assessmentVarianceOfAll;

    final double[] assessmentVariance;

    private int usual = -1;

    ModelPoint(Psi psi, double kappa, int supervisors) {
        this.kappa = kappa;
        levels = psi.levels();
        stride = levels + 2;
        beta = PsiLayout.array(psi.difficulty());
        gamma = PsiLayout.array(psi.complexity());
        gain = psi.gain();
        gapLoss = psi.gapLoss();
        levelVariance = variance(psi.levelSd());
        gainVariance = variance(psi.gainSd());
        stepVariance = variance(psi.stepSd());
        pairVariance = variance(psi.pairSd());
        severityVariance = variance(psi.severitySd());
        walk = psi.walk();
        gapWalk = psi.gapWalk();
        tau = PsiLayout.array(psi.thresholds());
        double sum = 0;
        for (double t : tau) {
            sum += t;
        }
        tauMean = sum / tau.length;
        expThreshold = new double[supervisors * stride];
        threshold = new double[supervisors * stride];
        assessmentVarianceOfAll = variance(psi.assessmentSd());
        assessmentVariance = new double[supervisors];
        for (int v = 0; v < supervisors; v++) {
            assessmentVariance[v] = variance(psi.assessmentSd() * Math.exp(at(psi.halo(), v)));
            place(v, at(psi.range(), v));
        }
    }

    /** Thresholds of one supervisor; one of usual range shares the exponentials of the first such. */
    private void place(int v, double range) {
        int row = v * stride;
        if (range == 0 && usual >= 0) {
            System.arraycopy(threshold, usual, threshold, row, stride);
            System.arraycopy(expThreshold, usual, expThreshold, row, stride);
            return;
        }
        double stretch = Math.exp(range);
        for (int k = 2; k <= levels; k++) {
            threshold[row + k] = tauMean + stretch * (tau[k - 2] - tauMean);
            expThreshold[row + k] = Math.exp(Math.max(-60, Math.min(60, threshold[row + k])));
        }
        usual = range == 0 ? row : usual;
    }

    private static double at(List<Double> perSupervisor, int v) {
        return v < perSupervisor.size() ? perSupervisor.get(v) : 0;
    }

    private static double variance(double sd) {
        return Math.max(sd, LEAST_SD) * Math.max(sd, LEAST_SD);
    }

    /** Share of the gain reached after n cases, {@code 1 - exp(-n / kappa)}. */
    double growth(double experience) {
        return -Math.expm1(-experience / kappa);
    }

    /** Variance of the walk between two cases. */
    double walkVariance(double moreExperience, double gapExcess) {
        return Math.max(walk * Math.max(moreExperience, LEAST_STEP) + gapWalk * gapExcess, LEAST_WALK);
    }

    static double leastStep(double moreExperience) {
        return Math.max(moreExperience, LEAST_STEP);
    }

    /** True when the walk variance does not sit on its floor, so its derivative counts. */
    boolean walkIsFree(double moreExperience, double gapExcess) {
        return walk * Math.max(moreExperience, LEAST_STEP) + gapWalk * gapExcess > LEAST_WALK;
    }
}
