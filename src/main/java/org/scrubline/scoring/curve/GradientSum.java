package org.scrubline.scoring.curve;

/** Sums the trainees' parts of the gradient, in their order, and carries them over to the optimiser's vector. */
final class GradientSum {

    private final PsiLayout layout;
    private final ModelPoint point;
    private final double[] beta;
    private final double[] gamma;

    /** By supervisor and level. */
    final double[] threshold;

    private final double[] halo;
    private double gain;
    private double gapLoss;
    private double levelSd;
    private double gainSd;
    private double stepSd;
    private double pairSd;
    private double walk;
    private double gapWalk;
    private double severitySd;

    GradientSum(PsiLayout layout, ModelPoint point, int supervisors) {
        this.layout = layout;
        this.point = point;
        beta = new double[layout.steps];
        gamma = new double[layout.covariates];
        threshold = new double[supervisors * point.stride];
        halo = new double[supervisors];
    }

    void add(TraineeSlope s) {
        Dense.add(beta, 0, s.beta, 0, 0, beta.length, 1);
        Dense.add(gamma, 0, s.gamma, 0, 0, gamma.length, 1);
        for (int v = 0; v < s.halo.length; v++) {
            int supervisor = s.work.supervisors[v];
            halo[supervisor] += s.halo[v];
            Dense.add(threshold, supervisor * point.stride, s.threshold, v * point.stride, 0, point.stride, 1);
        }
        gain += s.gain;
        gapLoss += s.gapLoss;
        levelSd += s.levelSd;
        gainSd += s.gainSd;
        stepSd += s.stepSd;
        pairSd += s.pairSd;
        walk += s.walk;
        gapWalk += s.gapWalk;
    }

    void addSeverities(JointSolution group, double[] covariance) {
        for (int v = 0; v < group.supervisors; v++) {
            double x = group.severity[v];
            double variance = covariance[v * group.supervisors + v];
            severitySd += (x * x + variance + 2 * x * group.severityStep[v]) / point.severityVariance - 1;
        }
    }

    void write(double[] vector, double[] gradient) {
        thresholds(vector, gradient);
        for (int s = 0; s < layout.length("beta"); s++) {
            gradient[layout.start("beta") + s] = beta[s] - beta[beta.length - 1];
        }
        for (int x = 0; x < gamma.length; x++) {
            gradient[layout.start("gamma") + x] = gamma[x];
        }
        put(gradient, "mu_g", gain);
        put(gradient, "phi", gapLoss);
        put(gradient, "ls_a", levelSd);
        put(gradient, "ls_g", gainSd);
        put(gradient, "ls_d", stepSd);
        put(gradient, "ls_n", pairSd);
        put(gradient, "lq", walk);
        put(gradient, "lqg", gapWalk);
        put(gradient, "ls_l", severitySd);
        double all = 0;
        for (int v = 0; v < halo.length; v++) {
            all += halo[v];
            if (layout.has("hal")) {
                gradient[layout.start("hal") + v] = halo[v];
            }
        }
        put(gradient, "ls_u", all);
    }

    private void put(double[] gradient, String group, double value) {
        if (layout.has(group)) {
            gradient[layout.start(group)] = value;
        }
    }

    /** From the supervisors' thresholds to τ_2 and the log gaps, and to each supervisor's range. */
    private void thresholds(double[] vector, double[] gradient) {
        int count = point.tau.length;
        double[] tau = new double[count];
        for (int v = 0; v < halo.length; v++) {
            double stretch = layout.has("rho") ? Math.exp(vector[layout.start("rho") + v]) : 1;
            double sum = 0;
            double spread = 0;
            for (int k = 0; k < count; k++) {
                double slope = threshold[v * point.stride + 2 + k];
                tau[k] += stretch * slope;
                sum += slope;
                spread += slope * (point.tau[k] - point.tauMean);
            }
            for (int k = 0; k < count; k++) {
                tau[k] += (1 - stretch) * sum / count;
            }
            if (layout.has("rho")) {
                gradient[layout.start("rho") + v] = stretch * spread;
            }
        }
        double above = 0;
        for (int k = count - 1; k >= 0; k--) {
            above += tau[k];
            gradient[layout.start("tau") + k] = k == 0 ? above : above * Math.exp(vector[k]);
        }
    }
}
