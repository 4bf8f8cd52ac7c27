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

    /** Posterior variance of each score's location, and of each whole-assessment effect. */
    private final double[] variance;

    private final double[] overallVariance;
    private final double[] stepImage;
    private final double[] pairVariance;

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

    private double shifted;
    private double spreadWeighted;

    TraineeSlope(TraineeWork work) {
        this.work = work;
        spread = new TraineeSpread(work);
        variance = new double[work.scores];
        overallVariance = new double[work.assessments];
        stepImage = new double[work.steps];
        pairVariance = new double[work.supervisors.length];
        beta = new double[work.steps];
        gamma = new double[work.table.covariates];
        threshold = new double[work.supervisors.length * (work.table.levels + 2)];
        halo = new double[work.supervisors.length];
    }

    /**
     * Variances of all locations, and the right-hand sides of the second solve.
     *
     * @param severity covariance of the severities of the supervisors met
     * @param blockSeverity severities of all supervisors solved together
     */
    void prepare(ModelPoint point, double[] severity, double[] blockSeverity) {
        spread.compute(severity);
        pairVariances(severity);
        TraineeWork t = work;
        t.lay(point, blockSeverity);
        Arrays.fill(t.side, 0);
        Arrays.fill(t.chainSide, 0);
        for (int i = 0; i < t.cases; i++) {
            int first = t.table.assessmentStart[t.caseOffset + i] - t.assessmentOffset;
            int end = t.table.assessmentStart[t.caseOffset + i + 1] - t.assessmentOffset;
            for (int j = first; j < end; j++) {
                t.thresholds(point, i, j);
                variances(i, j);
            }
        }
        TraineeSweep.eliminateChainSide(t);
        System.arraycopy(t.side, 0, t.solution, 0, t.border);
        Dense.solve(t.matrix, t.border, t.solution);
    }

    private void variances(int i, int j) {
        TraineeWork t = work;
        double[] e = spread.contrast(i, t.pair[j]);
        double[] image = spread.image(e);
        double c0 = Dense.dot(e, 0, image, 0, t.border) + spread.rest[i];
        double total = t.totalWeight[j];
        weightedImages(j, image, c0 * total);
        double d = t.overallVariance[j];
        double own = spreadWeighted * d * d + d;
        overallVariance[j] = own;
        double gradient = 0;
        int end = t.table.scoreStart[t.assessmentOffset + j + 1];
        for (int k = t.table.scoreStart[t.assessmentOffset + j]; k < end; k++) {
            int s = t.table.step[k];
            int column = 2 + s;
            double h = image[column];
            double vw = shifted + h * total + stepImage[s];
            double v = c0 + 2 * h + spread.covariance[column * t.border + column] - 2 * vw * d + own;
            variance[k - t.scoreOffset] = v;
            t.residual[s] = -0.5 * v * slopeOfWeight(t, k);
            gradient += t.residual[s];
        }
        t.overallGradient[j] = gradient;
        TraineeSweep.side(t, i, j, gradient * d);
    }

    /** Sets w'V and w'Vw of the assessment, V the covariance of its locations without its own effect. */
    private void weightedImages(int j, double[] image, double start) {
        TraineeWork t = work;
        int first = t.table.scoreStart[t.assessmentOffset + j];
        int end = t.table.scoreStart[t.assessmentOffset + j + 1];
        Arrays.fill(stepImage, 0);
        double weighted = 0;
        for (int k = first; k < end; k++) {
            int row = (2 + t.table.step[k]) * t.border + 2;
            double w = t.weight[k - t.scoreOffset];
            weighted += w * image[2 + t.table.step[k]];
            Dense.add(stepImage, 0, spread.covariance, row, 0, t.steps, w);
        }
        shifted = start + weighted;
        spreadWeighted = 0;
        for (int k = first; k < end; k++) {
            int s = t.table.step[k];
            double vw = shifted + image[2 + s] * t.totalWeight[j] + stepImage[s];
            spreadWeighted += t.weight[k - t.scoreOffset] * vw;
        }
    }

    private static double slopeOfWeight(TraineeWork t, int k) {
        byte span = t.table.span[k];
        double own = t.stepFactor[t.table.step[k]];
        double xa = t.thresholdFactor[ScoreTable.lowest(span)] * own;
        double xb = t.thresholdFactor[ScoreTable.highest(span) + 1] * own;
        double ga = 1 / (1 + xa);
        double gb = 1 / (1 + xb);
        return ga * ga * xa * (1 - 2 * ga) + gb * gb * xb * (1 - 2 * gb);
    }

    /** Posterior variance of the whole-assessment effect of assessment j, after {@link #prepare}. */
    double overallVariance(int j) {
        return overallVariance[j];
    }

    /** Derivatives, after the second solve has been carried back to this trainee. */
    void collect(ModelPoint point, double[] blockSeverity) {
        TraineeWork t = work;
        t.lay(point, blockSeverity);
        Arrays.fill(beta, 0);
        Arrays.fill(gamma, 0);
        Arrays.fill(threshold, 0);
        Arrays.fill(halo, 0);
        gain = 0;
        gapLoss = 0;
        for (int i = 0; i < t.cases; i++) {
            int first = t.table.assessmentStart[t.caseOffset + i] - t.assessmentOffset;
            int end = t.table.assessmentStart[t.caseOffset + i + 1] - t.assessmentOffset;
            for (int j = first; j < end; j++) {
                t.thresholds(point, i, j);
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

    /** Adds the derivatives of one assessment's scores; returns the sum of corrected residuals. */
    private double corrected(int j, double common) {
        TraineeWork t = work;
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
            double va = ga * ga * xa;
            double vb = gb * gb * xb;
            double half = 0.5 * variance[k - t.scoreOffset];
            double z = common + t.combined[2 + s];
            double bendA = va * (1 - 2 * ga);
            double bendB = vb * (1 - 2 * gb);
            double star = xa * ga - gb - half * (bendA + bendB) - t.weight[k - t.scoreOffset] * z;
            beta[s] -= star;
            sum += star;
            threshold[row + low] += half * bendA + z * va - xa * ga;
            threshold[row + high] += half * bendB + z * vb + gb;
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
            double v = r < t.pairColumn ? spread.covariance[r * t.border + r] : pairVariance[r - t.pairColumn];
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
                g[w] = (v == w ? 1 : 0) - spread.pairPull[(t.pairColumn + v) * met + w];
            }
            Dense.multiply(severity, met, g, image);
            double n = spread.pairPull[(t.pairColumn + v) * met + v] / kappa;
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
