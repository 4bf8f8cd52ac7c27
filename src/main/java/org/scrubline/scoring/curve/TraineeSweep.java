package org.scrubline.scoring.curve;

import java.util.Arrays;

/**
 * One Newton sweep over a trainee. Whole-assessment effects (scalars), then the walk (tridiagonal), then the border are
 * eliminated in this order, so the cost is O(cases × B²) with B about 25 to 35. Severities come last, jointly for all
 * trainees: each enters every score exactly as minus the trainee × supervisor effect, so the block a trainee adds is
 * {@code κI − κ²N} with κ = 1/σ_ν² and N the inverse border matrix at those columns.
 */
final class TraineeSweep {

    private static final double FLUSH = 1e-100;

    private TraineeSweep() {}

    /**
     * Likelihood, gradient and factor at the present state.
     *
     * @param severity severity of each supervisor of the block
     */
    static void forward(TraineeWork t, ModelPoint point, double[] severity) {
        t.lay(point, severity);
        Arrays.fill(t.matrix, 0);
        Arrays.fill(t.side, 0);
        Arrays.fill(t.coupling, 0);
        t.logLikelihood = 0;
        t.penalty = 0;
        t.logDeterminant = 0;
        for (int i = 0; i < t.cases; i++) {
            t.pivot[i] = 0;
            t.chainSide[i] = 0;
            int first = t.table.assessmentStart[t.caseOffset + i] - t.assessmentOffset;
            int end = t.table.assessmentStart[t.caseOffset + i + 1] - t.assessmentOffset;
            for (int j = first; j < end; j++) {
                t.thresholds(point, i, j);
                double gradient = scores(t, j);
                gather(t, point, i, j, gradient);
            }
        }
        chainPrior(t);
        eliminateChain(t);
        closeBorder(t);
    }

    /** Residuals and weights of the scores of one assessment; returns the sum of residuals. */
    static double scores(TraineeWork t, int j) {
        ScoreTable table = t.table;
        double[] factor = t.thresholdFactor;
        double[] profile = t.profile;
        Arrays.fill(profile, 2, profile.length, 0);
        double product = 1;
        double gradient = 0;
        double total = 0;
        int end = table.scoreStart[t.assessmentOffset + j + 1];
        for (int i = table.scoreStart[t.assessmentOffset + j]; i < end; i++) {
            int step = table.step[i];
            byte span = table.span[i];
            double own = t.stepFactor[step];
            double xa = factor[ScoreTable.lowest(span)] * own;
            double xb = factor[ScoreTable.highest(span) + 1] * own;
            double ga = 1 / (1 + xa);
            double gb = 1 / (1 + xb);
            double qa = xa * ga;
            double qb = xb * gb;
            double w = ga * qa + gb * qb;
            product *= ga * qb;
            if (product < FLUSH) {
                t.logLikelihood += Math.log(product);
                product = 1;
            }
            t.weight[i - t.scoreOffset] = w;
            t.residual[step] = qa - gb;
            profile[2 + step] = w;
            gradient += qa - gb;
            total += w;
        }
        t.logLikelihood += Math.log(product);
        t.totalWeight[j] = total;
        return gradient;
    }

    /** Eliminates one whole-assessment effect into the border and its case of the walk. */
    private static void gather(TraineeWork t, ModelPoint point, int i, int j, double gradient) {
        double prior = point.assessmentVariance[t.table.supervisor[t.assessmentOffset + j]];
        double total = t.totalWeight[j];
        double shrink = 1 / (1 + prior * total);
        double variance = prior * shrink;
        double own = gradient - t.overall[j] / prior;
        t.penalty += t.overall[j] * t.overall[j] / prior;
        t.logDeterminant -= Math.log(shrink);
        t.overallGradient[j] = own;
        t.overallVariance[j] = variance;
        double f = t.growth[i];
        t.profile[0] = total;
        t.profile[1] = f * total;
        matrix(t, j, f, variance);
        int row = i * t.border;
        Dense.add(t.coupling, row, t.profile, 0, 0, t.pairColumn, shrink);
        t.coupling[row + t.pairColumn + t.pair[j]] += shrink * total;
        t.pivot[i] += shrink * total;
        side(t, i, j, own * variance);
    }

    private static void matrix(TraineeWork t, int j, double f, double variance) {
        double[] m = t.matrix;
        double[] p = t.profile;
        int b = t.border;
        int pair = t.pairColumn + t.pair[j];
        double total = p[0];
        for (int r = 0; r < t.pairColumn; r++) {
            double c = variance * p[r];
            Dense.subtract(m, r * b, p, 0, r, t.pairColumn, c);
            m[r * b + pair] += p[r] - c * total;
            m[r * b + r] += r == 1 ? f * f * total : p[r];
        }
        m[1] += f * total;
        Dense.add(m, 0, p, 0, 2, t.pairColumn, 1);
        Dense.add(m, b, p, 0, 2, t.pairColumn, f);
        m[pair * b + pair] += total - variance * total * total;
    }

    /** Adds the residuals of assessment j, less what its own effect takes up, to the right-hand sides. */
    static void side(TraineeWork t, int i, int j, double taken) {
        ScoreTable table = t.table;
        double sum = 0;
        int end = table.scoreStart[t.assessmentOffset + j + 1];
        for (int k = table.scoreStart[t.assessmentOffset + j]; k < end; k++) {
            int step = table.step[k];
            double rest = t.residual[step] - t.weight[k - t.scoreOffset] * taken;
            t.side[2 + step] += rest;
            sum += rest;
        }
        t.side[0] += sum;
        t.side[1] += t.growth[i] * sum;
        t.side[t.pairColumn + t.pair[j]] += sum;
        t.chainSide[i] += sum;
    }

    private static void chainPrior(TraineeWork t) {
        double before = 0;
        for (int i = 0; i < t.cases; i++) {
            double q = t.walkVariance[i];
            double rise = t.walk[i] - before;
            before = t.walk[i];
            t.penalty += rise * rise / q;
            t.logDeterminant += Math.log(q);
            t.pivot[i] += 1 / q;
            t.chainSide[i] -= rise / q;
            if (i > 0) {
                t.pivot[i - 1] += 1 / q;
                t.chainSide[i - 1] += rise / q;
                t.off[i - 1] = -1 / q;
            }
        }
    }

    private static void eliminateChain(TraineeWork t) {
        int b = t.border;
        for (int i = 0; i < t.cases; i++) {
            if (i > 0) {
                double m = t.off[i - 1] / t.pivot[i - 1];
                t.pivot[i] -= m * t.off[i - 1];
                Dense.subtract(t.coupling, i * b, t.coupling, (i - 1) * b, 0, b, m);
            }
            double inverse = 1 / t.pivot[i];
            t.logDeterminant += Math.log(t.pivot[i]);
            for (int r = 0; r < b; r++) {
                double c = t.coupling[i * b + r];
                Dense.subtract(t.matrix, r * b, t.coupling, i * b, r, b, c * inverse);
            }
        }
        eliminateChainSide(t);
    }

    /** The same elimination on the right-hand sides alone. */
    static void eliminateChainSide(TraineeWork t) {
        int b = t.border;
        for (int i = 0; i < t.cases; i++) {
            if (i > 0) {
                t.chainSide[i] -= t.off[i - 1] / t.pivot[i - 1] * t.chainSide[i - 1];
            }
            Dense.subtract(t.side, 0, t.coupling, i * b, 0, b, t.chainSide[i] / t.pivot[i]);
        }
    }

    private static void closeBorder(TraineeWork t) {
        for (int r = 0; r < t.border; r++) {
            double x = t.effect[r];
            t.penalty += t.precision[r] * x * x;
            t.logDeterminant -= Math.log(t.precision[r]);
            t.matrix[r * t.border + r] += t.precision[r];
            t.side[r] -= t.precision[r] * x;
        }
        t.logDeterminant += Dense.cholesky(t.matrix, t.border);
        System.arraycopy(t.side, 0, t.solution, 0, t.border);
        Dense.solve(t.matrix, t.border, t.solution);
    }

    /**
     * Step of every effect of the trainee once the severities' step is known. Fills {@code combined}, the border step
     * with severities counted in, and records the largest change of a score's location.
     */
    static void back(TraineeWork t, double[] severityStep) {
        int b = t.border;
        double kappa = t.pairPrecision;
        Arrays.fill(t.combined, 0);
        for (int v = 0; v < t.supervisors.length; v++) {
            t.combined[t.pairColumn + v] = -kappa * severityStep[t.blockSupervisors[v]];
        }
        Dense.solve(t.matrix, b, t.combined);
        Dense.add(t.combined, 0, t.solution, 0, 0, b, 1);
        System.arraycopy(t.combined, 0, t.effectStep, 0, b);
        for (int v = 0; v < t.supervisors.length; v++) {
            t.effectStep[t.pairColumn + v] += severityStep[t.blockSupervisors[v]];
        }
        for (int i = t.cases - 1; i >= 0; i--) {
            double r = (t.chainSide[i] - Dense.dot(t.coupling, i * b, t.combined, 0, b)) / t.pivot[i];
            t.walkStep[i] = i == t.cases - 1 ? r : r - t.off[i] / t.pivot[i] * t.walkStep[i + 1];
        }
        backScores(t);
    }

    private static void backScores(TraineeWork t) {
        ScoreTable table = t.table;
        t.largestStep = 0;
        for (int i = 0; i < t.cases; i++) {
            int first = table.assessmentStart[t.caseOffset + i] - t.assessmentOffset;
            int end = table.assessmentStart[t.caseOffset + i + 1] - t.assessmentOffset;
            for (int j = first; j < end; j++) {
                double common = common(t, i, j);
                double moved = 0;
                double least = Double.MAX_VALUE;
                double most = -Double.MAX_VALUE;
                int last = table.scoreStart[t.assessmentOffset + j + 1];
                for (int k = table.scoreStart[t.assessmentOffset + j]; k < last; k++) {
                    double l = common + t.combined[2 + table.step[k]];
                    moved += t.weight[k - t.scoreOffset] * l;
                    least = Math.min(least, l);
                    most = Math.max(most, l);
                }
                t.overallStep[j] = (t.overallGradient[j] - moved) * t.overallVariance[j];
                double u = t.overallStep[j];
                t.largestStep = Math.max(t.largestStep, Math.max(Math.abs(most + u), Math.abs(least + u)));
            }
        }
    }

    /** Step of the part of a score's location that all steps of the assessment share, without its own effect. */
    static double common(TraineeWork t, int i, int j) {
        return t.combined[0] + t.combined[1] * t.growth[i] + t.walkStep[i] + t.combined[t.pairColumn + t.pair[j]];
    }
}
