package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The case-by-case update: what was known at each moment, at a cost that does not grow with the number of cases. The
 * state is (level, gain, step effects, trainee × supervisor effects) with a joint normal law; severities are those of a
 * population fit, and their uncertainty is part of the supervisor's lasting effect on this trainee, not fresh noise on
 * each case, which would make bands a tenth too narrow.
 *
 * <p>Against the full smoothing of the same scores the level differs by .2 posterior standard deviations on average.
 * The past is not revised: use {@link CompetencyModel} for a curve, this for audit and for early signals. Not safe for
 * use by several threads.
 */
final class RunningEstimate {

    private static final int NEWTON_STEPS = 4;
    private static final double LONGEST_MOVE = 2;

    private final PopulationFit fit;

    /** Supervisors met so far, in the order of their columns. */
    private final List<String> met = new ArrayList<>();

    private ScoreTable table;
    private ModelPoint point;
    private double[] severity;

    /** Column of each supervisor of the table; 0 for those this trainee has not met. */
    private int[] pairColumn;

    private int size;
    private double[] mean;
    private double[] covariance;
    private double experience;
    private boolean started;

    private double[] trial;
    private double[] factor;
    private double[] scratch;
    private final double[] location;
    private final double[] score;
    private final double[] weight;

    private double innovation;

    /**
     * Starts from the population's law.
     *
     * @param fit population parameters and severities
     * @param table that holds the assessments
     * @param trainee place of the trainee in the table, or -1 for one without scores
     */
    RunningEstimate(PopulationFit fit, ScoreTable table, int trainee) {
        this.fit = fit;
        int steps = table.steps().size();
        location = new double[steps];
        score = new double[steps];
        weight = new double[steps];
        this.table = table;
        point = new ModelPoint(
                fit.psiFor(table), fit.kappa(), table.supervisors().size());
        size = 2 + steps;
        mean = new double[size];
        covariance = new double[size * size];
        covariance[0] = point.levelVariance;
        covariance[size + 1] = point.gainVariance;
        for (int s = 0; s < steps; s++) {
            covariance[(2 + s) * (size + 1)] = point.stepVariance;
        }
        severity = new double[0];
        pairColumn = new int[0];
        trial = new double[0];
        factor = new double[0];
        scratch = new double[0];
        bind(table, trainee);
    }

    /** Takes over a table with more assessments of the same trainee; supervisors not met before get a column. */
    final void bind(ScoreTable longer, int trainee) {
        if (!longer.steps().equals(table.steps())) {
            throw new IllegalArgumentException("the steps differ from those of the history so far");
        }
        table = longer;
        int supervisors = table.supervisors().size();
        point = new ModelPoint(fit.psiFor(table), fit.kappa(), supervisors);
        severity = new double[supervisors];
        pairColumn = new int[supervisors];
        for (int v : new TraineeWork(table, trainee).supervisors) {
            String id = table.supervisors().get(v);
            Optional<PopulationFit.Severity> known = fit.severity(id);
            severity[v] = known.map(PopulationFit.Severity::mean).orElse(0.0);
            if (!met.contains(id)) {
                grow(known.map(s -> s.sd() * s.sd()).orElse(point.severityVariance));
                met.add(id);
            }
            pairColumn[v] = 2 + table.steps().size() + met.indexOf(id);
        }
        trial = new double[size + 1];
        factor = new double[(size + 1) * (size + 1)];
        scratch = new double[size + 1];
    }

    /** One more trainee × supervisor effect, independent of all others so far. */
    private void grow(double severityVariance) {
        double[] larger = new double[(size + 1) * (size + 1)];
        for (int r = 0; r < size; r++) {
            System.arraycopy(covariance, r * size, larger, r * (size + 1), size);
        }
        larger[larger.length - 1] = point.pairVariance + severityVariance;
        mean = Arrays.copyOf(mean, size + 1);
        covariance = larger;
        size++;
    }

    /** Level over all steps now, severity 0, no complexity, in logits. */
    double level() {
        int steps = table.steps().size();
        double sum = mean[0];
        for (int s = 0; s < steps; s++) {
            sum += mean[2 + s] / steps;
        }
        return sum;
    }

    /** Standard deviation of {@link #level}. */
    double sd() {
        int steps = table.steps().size();
        double[] e = new double[size];
        e[0] = 1;
        Arrays.fill(e, 2, 2 + steps, 1.0 / Math.max(steps, 1));
        return Math.sqrt(Math.max(Dense.form(e, covariance, e, size), 0));
    }

    /** How far the last assessment lay from its prediction, in standard deviations; standard normal when on course. */
    double innovation() {
        return innovation;
    }

    /** Carries the state to a case. */
    void advance(double toExperience, double gapExcess) {
        double from = started ? experience : toExperience - 1;
        double rise = point.growth(toExperience) - (started ? point.growth(experience) : 0);
        mean[0] += rise * (point.gain + mean[1]) - point.gapLoss * gapExcess;
        Dense.add(covariance, 0, covariance, size, 0, size, rise);
        for (int r = 0; r < size; r++) {
            covariance[r * size] += rise * covariance[r * size + 1];
        }
        covariance[0] += point.walkVariance(toExperience - from, gapExcess);
        experience = toExperience;
        started = true;
    }

    /** Counts assessment j of the table, after {@link #advance} to its case. */
    void observe(int j) {
        int d = size + 1;
        double[] inverse = priorPrecision(j);
        Arrays.fill(trial, 0);
        System.arraycopy(mean, 0, trial, 0, size);
        double[] before = trial.clone();
        for (int k = 0; k < NEWTON_STEPS; k++) {
            locate(j);
            if (k == 0) {
                innovation = innovation(j);
            }
            derivatives(j, 0);
            System.arraycopy(inverse, 0, factor, 0, d * d);
            double[] away = trial.clone();
            Dense.subtract(away, 0, before, 0, 0, d, 1);
            Dense.multiply(inverse, d, away, scratch);
            for (int r = 0; r < d; r++) {
                scratch[r] = -scratch[r];
            }
            addScores(j);
            Dense.cholesky(factor, d);
            Dense.solve(factor, d, scratch);
            double most = 0;
            for (double move : scratch) {
                most = Math.max(most, Math.abs(move));
            }
            Dense.add(trial, 0, scratch, 0, 0, d, Math.min(1, LONGEST_MOVE / Math.max(most, 1e-12)));
        }
        keep(Dense.inverse(factor, d, 0));
    }

    private double[] priorPrecision(int j) {
        int d = size + 1;
        double[] prior = covariance.clone();
        Dense.cholesky(prior, size);
        double[] inverse = Dense.inverse(prior, size, 0);
        double[] all = new double[d * d];
        for (int r = 0; r < size; r++) {
            System.arraycopy(inverse, r * size, all, r * d, size);
        }
        all[d * d - 1] = 1 / point.assessmentVariance[table.supervisor[j]];
        return all;
    }

    /** Locations of the scored steps at the trial state. */
    private void locate(int j) {
        int v = table.supervisor[j];
        double base = trial[0] + trial[size] + trial[pairColumn[v]] - severity[v];
        for (int x = 0; x < point.gamma.length; x++) {
            base -= point.gamma[x] * table.complexity[j * point.gamma.length + x];
        }
        for (int k = table.scoreStart[j]; k < table.scoreStart[j + 1]; k++) {
            int s = table.step[k];
            location[s] = base + trial[2 + s] - point.beta[s];
        }
    }

    /** Residual and weight of each scored step, with all locations shifted. */
    private void derivatives(int j, double shift) {
        int row = table.supervisor[j] * point.stride;
        for (int k = table.scoreStart[j]; k < table.scoreStart[j + 1]; k++) {
            int s = table.step[k];
            int low = ScoreTable.lowest(table.span[k]);
            int high = ScoreTable.highest(table.span[k]) + 1;
            double l = location[s] + shift;
            double ga = low == 1 ? 1 : 1 / (1 + Math.exp(point.threshold[row + low] - l));
            double gb = high > point.levels ? 0 : 1 / (1 + Math.exp(point.threshold[row + high] - l));
            score[s] = 1 - ga - gb;
            weight[s] = ga * (1 - ga) + gb * (1 - gb);
        }
    }

    private void addScores(int j) {
        int d = size + 1;
        int pair = pairColumn[table.supervisor[j]];
        for (int k = table.scoreStart[j]; k < table.scoreStart[j + 1]; k++) {
            int s = table.step[k];
            int[] columns = {0, 2 + s, pair, size};
            for (int r : columns) {
                scratch[r] += score[s];
                for (int c : columns) {
                    factor[r * d + c] += weight[s];
                }
            }
        }
    }

    private void keep(double[] posterior) {
        int d = size + 1;
        System.arraycopy(trial, 0, mean, 0, size);
        for (int r = 0; r < size; r++) {
            System.arraycopy(posterior, r * d, covariance, r * size, size);
        }
    }

    /**
     * Standardised distance of an assessment from its prediction: the common shift of all locations that its scores ask
     * for, over the standard deviation of that shift.
     */
    private double innovation(int j) {
        double shift = 0;
        double total = 0;
        for (int k = 0; k < 8; k++) {
            derivatives(j, shift);
            double sum = -shift / 4;
            total = 0;
            for (int i = table.scoreStart[j]; i < table.scoreStart[j + 1]; i++) {
                sum += score[table.step[i]];
                total += weight[table.step[i]];
            }
            shift += Math.max(-LONGEST_MOVE, Math.min(LONGEST_MOVE, sum / (total + 0.25)));
        }
        total = Math.max(total, 1e-6);
        double asked = shift * (total + 0.25) / total;
        return asked / Math.sqrt(predictionVariance(j, total) + 1 / total);
    }

    private double predictionVariance(int j, double total) {
        double[] e = new double[size];
        e[0] = 1;
        e[pairColumn[table.supervisor[j]]] = 1;
        for (int i = table.scoreStart[j]; i < table.scoreStart[j + 1]; i++) {
            e[2 + table.step[i]] += weight[table.step[i]] / total;
        }
        return Dense.form(e, covariance, e, size) + point.assessmentVariance[table.supervisor[j]];
    }

    /** The law of the next case as the reference supervisor, of given severity, would see it. */
    NextCase next(int[] critical, double[] caseMix, double panelSeverity) {
        double to = started ? experience + 1 : 0;
        double rise = point.growth(to) - (started ? point.growth(experience) : 0);
        int n = 2 + critical.length;
        double[] expected = new double[n];
        double[] e = new double[size];
        e[0] = 1;
        e[1] = rise;
        expected[0] = mean[0] + rise * (point.gain + mean[1]) - panelSeverity;
        expected[1] = mean[1];
        for (int x = 0; x < caseMix.length; x++) {
            expected[0] -= point.gamma[x] * caseMix[x];
        }
        double[] image = new double[size];
        Dense.multiply(covariance, size, e, image);
        double[] law = new double[n * n];
        law[0] = Dense.dot(e, 0, image, 0, size) + point.walkVariance(1, 0);
        int[] column = new int[n];
        column[1] = 1;
        for (int c = 0; c < critical.length; c++) {
            column[2 + c] = 2 + critical[c];
            expected[2 + c] = mean[2 + critical[c]];
        }
        for (int r = 1; r < n; r++) {
            law[r] = image[column[r]];
            law[r * n] = law[r];
            for (int c = 1; c < n; c++) {
                law[r * n + c] = covariance[column[r] * size + column[c]];
            }
        }
        return new NextCase(expected, law, to);
    }
}
