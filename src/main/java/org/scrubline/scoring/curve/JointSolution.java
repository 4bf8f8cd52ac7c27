package org.scrubline.scoring.curve;

import java.util.Arrays;
import java.util.List;

/**
 * The most likely state of some trainees and of all supervisors they share, at given population parameters: Newton on
 * a concave function, with step halving, so it converges from any start. Trainees are solved independently within a
 * sweep and summed in their order, so the number of threads changes no bit.
 */
final class JointSolution {

    private static final int MOST_SWEEPS = 60;
    private static final double TOLERANCE = 1e-8;
    private static final double LEAST_SHARE = 1e-6;

    final List<TraineeWork> trainees;
    final int supervisors;
    final double[] severity;
    final double[] severityStep;
    private SeverityPrior prior;
    private final double[] factor;
    private final double[] side;
    private double severityLogDeterminant;

    /**
     * @param trainees with {@code blockSupervisors} counted from 0 to supervisors-1
     * @param prior law of the severities
     */
    JointSolution(List<TraineeWork> trainees, SeverityPrior prior) {
        this.trainees = trainees;
        this.supervisors = prior.size();
        this.prior = prior;
        severity = prior.mean().clone();
        severityStep = new double[supervisors];
        factor = new double[supervisors * supervisors];
        side = new double[supervisors];
    }

    void prior(SeverityPrior law) {
        this.prior = law;
    }

    /** Solves for the mode; afterwards every factor belongs to it. */
    void solve(ModelPoint point, Workers workers) {
        workers.each(trainees.size(), i -> trainees.get(i).prepare(point));
        forward(point, workers);
        double value = objective();
        for (int sweep = 0; sweep < MOST_SWEEPS; sweep++) {
            step(true);
            double largest = back(workers);
            if (largest < TOLERANCE) {
                return;
            }
            double share = 1;
            move(1);
            forward(point, workers);
            double next = objective();
            while (!(next >= value - 1e-10 * Math.abs(value) - 1e-9) && share > LEAST_SHARE) {
                share /= 2;
                move(-share);
                forward(point, workers);
                next = objective();
            }
            value = next;
        }
    }

    private void forward(ModelPoint point, Workers workers) {
        workers.each(trainees.size(), i -> TraineeSweep.forward(trainees.get(i), point, severity));
    }

    private double back(Workers workers) {
        workers.each(trainees.size(), i -> TraineeSweep.back(trainees.get(i), severityStep));
        double largest = 0;
        for (TraineeWork t : trainees) {
            largest = Math.max(largest, t.largestStep);
        }
        return largest;
    }

    private void move(double share) {
        for (TraineeWork t : trainees) {
            t.move(share);
        }
        Dense.add(severity, 0, severityStep, 0, 0, supervisors, share);
    }

    /** Log-likelihood plus log priors of the state, without constants. */
    private double objective() {
        double sum = 0;
        for (TraineeWork t : trainees) {
            sum += t.logLikelihood - 0.5 * t.penalty;
        }
        return sum - 0.5 * severityPenalty();
    }

    private double severityPenalty() {
        double[] away = severity.clone();
        Dense.subtract(away, 0, prior.mean(), 0, 0, supervisors, 1);
        return Dense.form(away, prior.precision(), away, supervisors);
    }

    /**
     * Step of the severities from the trainees' factors.
     *
     * @param newton true for a Newton step; false to solve the same matrix for the trainees' present right-hand sides
     *     alone, without priors
     */
    void step(boolean newton) {
        Arrays.fill(side, 0);
        if (newton) {
            System.arraycopy(prior.precision(), 0, factor, 0, factor.length);
            double[] away = severity.clone();
            Dense.subtract(away, 0, prior.mean(), 0, 0, supervisors, 1);
            Dense.multiply(prior.precision(), supervisors, away, side);
            for (int v = 0; v < supervisors; v++) {
                side[v] = -side[v];
            }
        }
        for (TraineeWork t : trainees) {
            gather(t, newton);
        }
        if (newton) {
            severityLogDeterminant = Dense.cholesky(factor, supervisors);
        }
        System.arraycopy(side, 0, severityStep, 0, supervisors);
        Dense.solve(factor, supervisors, severityStep);
    }

    private void gather(TraineeWork t, boolean newton) {
        double kappa = t.pairPrecision;
        int met = t.supervisors.length;
        double[] information = newton ? information(t) : new double[0];
        for (int v = 0; v < met; v++) {
            double pull = t.solution[t.pairColumn + v] + (newton ? t.effect[t.pairColumn + v] : 0);
            side[t.blockSupervisors[v]] -= kappa * pull;
            for (int w = 0; newton && w < met; w++) {
                factor[t.blockSupervisors[v] * supervisors + t.blockSupervisors[w]] += information[v * met + w];
            }
        }
    }

    /** What a trainee's scores say about the severities of the supervisors met: κI − κ²N. */
    static double[] information(TraineeWork t) {
        double kappa = t.pairPrecision;
        double[] block = Dense.inverse(t.matrix, t.border, t.pairColumn);
        int met = t.supervisors.length;
        for (int i = 0; i < block.length; i++) {
            block[i] = -kappa * kappa * block[i];
        }
        for (int v = 0; v < met; v++) {
            block[v * met + v] += kappa;
        }
        return block;
    }

    /** Laplace approximation of the log marginal likelihood at the mode, without the constants of thresholds. */
    double logMarginal() {
        double determinants = severityLogDeterminant - prior.logDeterminant();
        for (TraineeWork t : trainees) {
            determinants += t.logDeterminant;
        }
        return objective() - 0.5 * determinants;
    }

    /** Covariance of the severities given all scores, R × R. */
    double[] severityCovariance() {
        return Dense.inverse(factor, supervisors, 0);
    }

    /** Joint precision of the severities given all scores, R × R. */
    double[] severityPrecision() {
        double[] precision = prior.precision().clone();
        for (TraineeWork t : trainees) {
            double[] block = information(t);
            int met = t.supervisors.length;
            for (int v = 0; v < met; v++) {
                for (int w = 0; w < met; w++) {
                    precision[t.blockSupervisors[v] * supervisors + t.blockSupervisors[w]] += block[v * met + w];
                }
            }
        }
        return precision;
    }
}
