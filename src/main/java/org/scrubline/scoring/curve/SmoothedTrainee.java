package org.scrubline.scoring.curve;

import java.util.Arrays;
import java.util.List;

/** One trainee's most likely state and its covariances, given all the trainee's scores and a population fit. */
final class SmoothedTrainee {

    final TraineeWork work;
    final ModelPoint point;
    final TraineeSpread spread;
    final SeverityMessage.Panel panel;

    /** Severities of the supervisors met, and their joint covariance. */
    final double[] severity;

    final double[] severityCovariance;

    /** Covariance of the border with the panel's mean severity. */
    private final double[] panelPull;

    private final double stepMean;

    private SmoothedTrainee(TraineeWork work, ModelPoint point, SeverityMessage message) {
        this.work = work;
        this.point = point;
        JointSolution solution = new JointSolution(List.of(work), message.prior);
        solution.solve(point, Workers.ONE);
        severity = solution.severity;
        severityCovariance = solution.severityCovariance();
        spread = new TraineeSpread(work);
        spread.compute(severityCovariance);
        panel = message.panel(severity, severityCovariance);
        panelPull = new double[work.border];
        for (int v = 0; v < work.supervisors.length; v++) {
            Dense.subtract(panelPull, 0, spread.pairPull[v], 0, 0, work.border, panel.covariance()[v]);
        }
        double sum = 0;
        for (int s = 0; s < work.steps; s++) {
            sum += work.effect[2 + s] / work.steps;
        }
        stepMean = sum;
    }

    /** @param trainee id; one without scores in the table keeps the population's law */
    static SmoothedTrainee of(PopulationFit fit, ScoreTable table, String trainee) {
        TraineeWork work = new TraineeWork(table, table.trainees().indexOf(trainee));
        Arrays.setAll(work.blockSupervisors, v -> v);
        List<String> met = Arrays.stream(work.supervisors)
                .mapToObj(table.supervisors()::get)
                .toList();
        ModelPoint point = new ModelPoint(
                fit.psiFor(table), fit.kappa(), table.supervisors().size());
        return new SmoothedTrainee(work, point, SeverityMessage.of(fit, trainee, met));
    }

    int cases() {
        return work.cases;
    }

    /** Level at case i without step effects, severity 0, no complexity. */
    private double bare(int i) {
        return work.effect[0]
                + (point.gain + work.effect[1]) * work.growth[i]
                + work.walk[i]
                - point.gapLoss * work.away[i];
    }

    /** Level at case i over all steps, severity 0. */
    double level(int i) {
        return bare(i) + stepMean;
    }

    /** Level at case i on one step of difficulty 0, seen by the mean supervisor of the panel. */
    double stepLevel(int i, int step) {
        return bare(i) + work.effect[2 + step] - panel.mean();
    }

    /**
     * Variances at case i: [0] of the level over all steps, [1] of the same less the panel's severity, [2+s] of step s
     * less the panel's severity.
     */
    double[] variances(int i) {
        int steps = work.steps;
        double[] e = spread.contrast(i, -1);
        double[] image = spread.image(e).clone();
        double rest = spread.rest[i];
        double base = Dense.dot(e, 0, image, 0, work.border) + rest;
        double shared = Dense.dot(e, 0, panelPull, 0, work.border);
        double[] v = new double[2 + steps];
        for (int s = 0; s < steps; s++) {
            int c = 2 + s;
            v[c] = base + 2 * image[c] + spread.covariance[c][c] - 2 * (shared + panelPull[c]) + panel.variance();
        }
        for (int s = 0; s < steps; s++) {
            e[2 + s] += 1.0 / steps;
        }
        double[] all = spread.image(e);
        v[0] = Dense.dot(e, 0, all, 0, work.border) + rest;
        v[1] = v[0] - 2 * Dense.dot(e, 0, panelPull, 0, work.border) + panel.variance();
        return v;
    }

    /** Prior variance of the level at case i less the panel's severity: what nobody's scores would leave. */
    double priorVariance(int i, int panelSize) {
        double f = work.growth[i];
        double v = point.levelVariance + f * f * point.gainVariance;
        v += work.steps == 0 ? 0 : point.stepVariance / work.steps;
        for (int k = 0; k <= i; k++) {
            v += work.walkVariance[k];
        }
        return v + point.severityVariance / Math.max(panelSize, 1);
    }

    /** The law of the next case, right after the last one. */
    NextCase next(int[] critical, double[] caseMix) {
        int last = work.cases - 1;
        double experience = last < 0 ? 0 : work.table.experience[work.caseOffset + last] + 1;
        double f = point.growth(experience);
        double[] e = new double[work.border];
        double rest = point.walkVariance(1, 0);
        double common = work.effect[0] + (point.gain + work.effect[1]) * f - panel.mean();
        e[0] = 1;
        e[1] = f;
        if (last >= 0) {
            Dense.subtract(e, 0, spread.regression, last * work.border, 0, work.border, 1);
            rest += spread.rest[last];
            common += work.walk[last] - point.gapLoss * work.away[last];
        }
        for (int x = 0; x < caseMix.length; x++) {
            common -= point.gamma[x] * caseMix[x];
        }
        return next(critical, e, rest, common, experience);
    }

    private NextCase next(int[] critical, double[] e, double rest, double common, double experience) {
        int n = 2 + critical.length;
        int[] column = new int[n];
        column[1] = 1;
        double[] mean = new double[n];
        mean[0] = common;
        mean[1] = work.effect[1];
        for (int c = 0; c < critical.length; c++) {
            column[2 + c] = 2 + critical[c];
            mean[2 + c] = work.effect[2 + critical[c]];
        }
        double[] image = spread.image(e);
        double[] covariance = new double[n * n];
        covariance[0] = Dense.dot(e, 0, image, 0, work.border)
                + rest
                - 2 * Dense.dot(e, 0, panelPull, 0, work.border)
                + panel.variance();
        for (int r = 1; r < n; r++) {
            covariance[r] = image[column[r]] - panelPull[column[r]];
            covariance[r * n] = covariance[r];
            for (int c = 1; c < n; c++) {
                covariance[r * n + c] = spread.covariance[column[r]][column[c]];
            }
        }
        return new NextCase(mean, covariance, experience);
    }
}
