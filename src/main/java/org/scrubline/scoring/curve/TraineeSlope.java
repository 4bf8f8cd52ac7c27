package org.scrubline.scoring.curve;

import java.util.Arrays;

/**
 * One trainee's part of the exact gradient of the Laplace log marginal likelihood. The mode moves with the population
 * parameters; its pull through the determinant is {@code c = -½ v w'} on every score, and one more solve with the same
 * factor ({@link #prepare} before, {@link #collect} after the severities' step) gives all derivatives at once.
 */
final class TraineeSlope {

    final TraineeWork work;
    final TraineeSpread spread;

    /** Slope of each score's lower residual, and the sum of an assessment's corrected residuals before the second solve. */
    private final double[] lower;

    private final double[] residuals;

    /** Posterior variance of each whole-assessment effect, and of each trainee × supervisor effect. */
    private final double[] overallVariance;

    private final double[] pairVariance;

    /** Of one assessment, at the border's columns: weights, their image, the variance of each step's location. */
    private final double[] stepWeight;

    private final double[] stepImage;
    private final double[] stepVariance;

    final double[] beta;
    final double[] gamma;

    /** Derivatives by the supervisors' thresholds, met × (K + 2). */
    final double[] threshold;

    /** Derivatives by log σ_u of each supervisor met. */
    final double[] halo;

    double gain;
    double gapLoss;
    double levelSd;
    double gainSd;
    double stepSd;
    double pairSd;
    double walk;
    double gapWalk;

    TraineeSlope(TraineeWork work) {
        this.work = work;
        spread = new TraineeSpread(work);
        lower = new double[work.scores];
        residuals = new double[work.assessments];
        overallVariance = new double[work.assessments];
        pairVariance = new double[work.supervisors.length];
        stepWeight = new double[work.pairColumn];
        stepImage = new double[work.border];
        stepVariance = new double[work.pairColumn];
        beta = new double[work.steps];
        gamma = new double[work.table.covariates];
        threshold = new double[work.supervisors.length * (work.table.levels + 2)];
        halo = new double[work.supervisors.length];
    }

    /**
     * Variances of all locations, the right-hand sides of the second solve, and what needs no second solve of the
     * derivatives by difficulties and thresholds.
     *
     * @param severity covariance of the severities of the supervisors met
     */
    void prepare(ModelPoint point, double[] severity) {
        spread.compute(severity);
        pairVariances(severity);
        TraineeWork t = work;
        Arrays.fill(t.side, 0);
        Arrays.fill(t.chainSide, 0);
        Arrays.fill(beta, 0);
        Arrays.fill(threshold, 0);
        for (int i = 0; i < t.cases; i++) {
            int first = t.table.assessmentStart[t.caseOffset + i] - t.assessmentOffset;
            int end = t.table.assessmentStart[t.caseOffset + i + 1] - t.assessmentOffset;
            for (int j = first; j < end; j++) {
                t.thresholds(point, i, j);
                variances(i, j);
                t.overallGradient[j] = bends(j);
                TraineeSweep.side(t, i, j, t.overallGradient[j] * t.overallVariance[j]);
            }
        }
        TraineeSweep.eliminateChainSide(t);
        System.arraycopy(t.side, 0, t.solution, 0, t.border);
        Dense.solve(t.matrix, t.border, t.solution);
    }

    /** Sets the variances of the locations of all steps in assessment j, and of its own effect. */
    private void variances(int i, int j) {
        TraineeWork t = work;
        double[] e = spread.contrast(i, t.pair[j]);
        double[] image = spread.image(e);
        double c0 = Dense.dot(e, 0, image, 0, t.border) + spread.rest[i];
        weigh(j);
        double total = t.totalWeight[j];
        double weighted = Dense.dot(stepWeight, 0, image, 0, t.pairColumn);
        double shifted = c0 * total + weighted;
        double within = Dense.dot(stepWeight, 0, stepImage, 0, t.pairColumn);
        double d = t.overallVariance[j];
        overallVariance[j] = (total * (shifted + weighted) + within) * d * d + d;
        double base = c0 + overallVariance[j] - 2 * d * shifted;
        double slope = 2 - 2 * d * total;
        for (int c = 2; c < t.pairColumn; c++) {
            stepVariance[c] = base + slope * image[c] + spread.covariance[c][c] - 2 * d * stepImage[c];
        }
    }

    /** Sets the weights w of assessment j at its steps' columns, and Vw, V the covariance of the border. */
    private void weigh(int j) {
        TraineeWork t = work;
        Arrays.fill(stepWeight, 0);
        int end = t.table.scoreStart[t.assessmentOffset + j + 1];
        for (int k = t.table.scoreStart[t.assessmentOffset + j]; k < end; k++) {
            stepWeight[2 + t.table.step[k]] = t.weight[k - t.scoreOffset];
        }
        Dense.multiply(spread.covariance, stepWeight, stepImage);
    }

    /** Pull of the determinant on every score of assessment j; returns its sum. */
    private double bends(int j) {
        TraineeWork t = work;
        double bent = 0;
        double sum = 0;
        int row = t.pair[j] * (t.table.levels + 2);
        int end = t.table.scoreStart[t.assessmentOffset + j + 1];
        for (int k = t.table.scoreStart[t.assessmentOffset + j]; k < end; k++) {
            int s = t.table.step[k];
            int low = ScoreTable.lowest(t.table.span[k]);
            int high = ScoreTable.highest(t.table.span[k]) + 1;
            double xa = t.thresholdFactor[low] * t.stepFactor[s];
            double xb = t.thresholdFactor[high] * t.stepFactor[s];
            double ga = 1 / (1 + xa);
            double gb = 1 / (1 + xb);
            double qa = xa * ga;
            double va = ga * qa;
            double half = 0.5 * stepVariance[2 + s];
            double bendA = half * va * (1 - 2 * ga);
            double bendB = half * gb * gb * xb * (1 - 2 * gb);
            double star = qa - gb - bendA - bendB;
            lower[k - t.scoreOffset] = va;
            t.residual[s] = -bendA - bendB;
            bent -= bendA + bendB;
            beta[s] -= star;
            sum += star;
            threshold[row + low] += bendA - qa;
            threshold[row + high] += bendB + gb;
        }
        residuals[j] = sum;
        return bent;
    }

    /** Posterior variance of the whole-assessment effect of assessment j, after {@link #prepare}. */
    double overallVariance(int j) {
        return overallVariance[j];
    }

    /** Derivatives, after the second solve has been carried back to this trainee. */
    void collect(ModelPoint point) {
        TraineeWork t = work;
        Arrays.fill(gamma, 0);
        Arrays.fill(halo, 0);
        gain = 0;
        gapLoss = 0;
        for (int i = 0; i < t.cases; i++) {
            int first = t.table.assessmentStart[t.caseOffset + i] - t.assessmentOffset;
            int end = t.table.assessmentStart[t.caseOffset + i + 1] - t.assessmentOffset;
            for (int j = first; j < end; j++) {
                double sum = corrected(j, TraineeSweep.common(t, i, j) + t.overallStep[j]);
                gain += t.growth[i] * sum;
                gapLoss -= t.away[i] * sum;
                for (int x = 0; x < gamma.length; x++) {
                    gamma[x] -= sum * t.table.complexity[(t.assessmentOffset + j) * gamma.length + x];
                }
                double prior = point.assessmentVariance[t.table.supervisor[t.assessmentOffset + j]];
                double u = t.overall[j];
                halo[t.pair[j]] += (u * u + overallVariance[j] + 2 * u * t.overallStep[j]) / prior - 1;
            }
        }
        spreads();
        walks(point);
    }

    /** Corrects the derivatives by the second solve's step of each score; returns the sum of corrected residuals. */
    private double corrected(int j, double common) {
        TraineeWork t = work;
        double sum = residuals[j];
        int row = t.pair[j] * (t.table.levels + 2);
        int end = t.table.scoreStart[t.assessmentOffset + j + 1];
        for (int k = t.table.scoreStart[t.assessmentOffset + j]; k < end; k++) {
            int s = t.table.step[k];
            double z = common + t.combined[2 + s];
            double moved = t.weight[k - t.scoreOffset] * z;
            double low = lower[k - t.scoreOffset] * z;
            beta[s] += moved;
            sum -= moved;
            threshold[row + ScoreTable.lowest(t.table.span[k])] += low;
            threshold[row + ScoreTable.highest(t.table.span[k]) + 1] += moved - low;
        }
        return sum;
    }

    private void spreads() {
        TraineeWork t = work;
        levelSd = spread(0, 1);
        gainSd = spread(1, 2);
        stepSd = spread(2, t.pairColumn);
        pairSd = spread(t.pairColumn, t.border);
    }

    private double spread(int from, int to) {
        TraineeWork t = work;
        double sum = 0;
        for (int r = from; r < to; r++) {
            double x = t.effect[r];
            double v = r < t.pairColumn ? spread.covariance[r][r] : pairVariance[r - t.pairColumn];
            sum += (x * x + v + 2 * x * t.effectStep[r]) * t.precision[r] - 1;
        }
        return sum;
    }

    /** Posterior variances of the trainee × supervisor effects themselves, without the severity: N + G S G'. */
    private void pairVariances(double[] severity) {
        TraineeWork t = work;
        int met = t.supervisors.length;
        double kappa = t.pairPrecision;
        double[] g = new double[met];
        double[] image = new double[met];
        for (int v = 0; v < met; v++) {
            for (int w = 0; w < met; w++) {
                g[w] = (v == w ? 1 : 0) - spread.pairPull[w][t.pairColumn + v];
            }
            Dense.multiply(severity, met, g, image);
            double n = spread.pairPull[v][t.pairColumn + v] / kappa;
            pairVariance[v] = n + Dense.dot(g, 0, image, 0, met);
        }
    }

    private void walks(ModelPoint point) {
        TraineeWork t = work;
        walk = 0;
        gapWalk = 0;
        for (int i = 0; i < t.cases; i++) {
            double q = t.walkVariance[i];
            double rise = i == 0 ? t.walk[0] : t.walk[i] - t.walk[i - 1];
            double bent = i == 0 ? t.walkStep[0] : t.walkStep[i] - t.walkStep[i - 1];
            double slope = 0.5 * ((rise * rise + spread.riseVariance(i) + 2 * rise * bent) / (q * q) - 1 / q);
            double gap = t.table.gapExcess[t.caseOffset + i];
            if (point.walkIsFree(t.moreExperience(i), gap)) {
                walk += slope * t.moreExperience(i) * point.walk;
                gapWalk += slope * gap * point.gapWalk;
            }
        }
    }
}
