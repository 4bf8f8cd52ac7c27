package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The penalised Laplace log marginal likelihood of all scores and its exact gradient by the population parameters.
 * Groups of supervisors and trainees that share nobody are solved apart and summed in order.
 */
final class ProgrammeLikelihood {

    final ScoreTable table;
    final PsiLayout layout;
    final PsiPriors priors;
    final List<JointSolution> groups = new ArrayList<>();
    final List<int[]> groupSupervisors;
    private final List<List<TraineeSlope>> slopes = new ArrayList<>();
    private final double kappa;
    private final Workers workers;

    /** Number of scores per supervisor and span, {@code [v * 256 + span]}: thresholds' own constants need no more. */
    private final int[] spanCounts;

    ProgrammeLikelihood(ScoreTable table, PsiLayout layout, PsiPriors priors, double kappa, Workers workers) {
        this.table = table;
        this.layout = layout;
        this.priors = priors;
        this.kappa = kappa;
        this.workers = workers;
        Connections connections = Connections.of(table);
        groupSupervisors = connections.supervisorGroups();
        for (int g = 0; g < groupSupervisors.size(); g++) {
            groups.add(group(groupSupervisors.get(g), connections.trainees(g)));
        }
        spanCounts = spanCounts(table);
    }

    private JointSolution group(int[] supervisors, List<Integer> trainees) {
        List<TraineeWork> works = new ArrayList<>();
        List<TraineeSlope> slope = new ArrayList<>();
        for (int trainee : trainees) {
            TraineeWork work = new TraineeWork(table, trainee);
            for (int v = 0; v < work.supervisors.length; v++) {
                work.blockSupervisors[v] = Arrays.binarySearch(supervisors, work.supervisors[v]);
            }
            works.add(work);
        }
        slopes.add(slope);
        return new JointSolution(works, SeverityPrior.independent(supervisors.length, 1));
    }

    static int[] spanCounts(ScoreTable table) {
        int[] counts = new int[table.supervisors.size() * 256];
        for (int j = 0; j < table.supervisor.length; j++) {
            for (int i = table.scoreStart[j]; i < table.scoreStart[j + 1]; i++) {
                counts[table.supervisor[j] * 256 + (table.span[i] & 255)]++;
            }
        }
        return counts;
    }

    /** Solves all groups at this point and returns the Laplace log marginal likelihood, without priors on ψ. */
    double solve(ModelPoint point) {
        double sum = spanConstants(point, new double[0]);
        for (JointSolution group : groups) {
            group.prior(SeverityPrior.independent(group.supervisors, point.severityVariance));
            group.solve(point, workers);
            sum += group.logMarginal();
        }
        return sum;
    }

    /** Σ log(1 − e^−D) over scores with both ends open; adds its derivatives by thresholds unless none are wanted. */
    private double spanConstants(ModelPoint point, double[] slope) {
        double sum = 0;
        for (int i = 0; i < spanCounts.length; i++) {
            int low = ScoreTable.lowest((byte) i);
            int high = ScoreTable.highest((byte) i);
            if (spanCounts[i] > 0 && low > 1 && high < point.levels) {
                int row = i / 256 * point.stride;
                double width = point.threshold[row + high + 1] - point.threshold[row + low];
                sum += spanCounts[i] * Math.log(-Math.expm1(-width));
                if (slope.length > 0) {
                    double push = spanCounts[i] / Math.expm1(width);
                    slope[row + low] -= push;
                    slope[row + high + 1] += push;
                }
            }
        }
        return sum;
    }

    /**
     * Penalised log marginal likelihood.
     *
     * @param gradient filled with its derivatives, unless its length is 0
     */
    double evaluate(double[] vector, double[] gradient) {
        ModelPoint point = new ModelPoint(layout.psi(vector), kappa, table.supervisors.size());
        double value = solve(point);
        if (gradient.length > 0) {
            gradient(point, vector, gradient);
        }
        return value + priors(vector, gradient);
    }

    private void gradient(ModelPoint point, double[] vector, double[] gradient) {
        Arrays.fill(gradient, 0);
        GradientSum sum = new GradientSum(layout, point, table.supervisors.size());
        spanConstants(point, sum.threshold);
        for (int g = 0; g < groups.size(); g++) {
            JointSolution group = groups.get(g);
            double[] covariance = group.severityCovariance();
            List<TraineeSlope> slope = slopes(g);
            workers.each(slope.size(), i -> {
                TraineeSlope s = slope.get(i);
                double[] met = subset(covariance, group.supervisors, s.work.blockSupervisors);
                s.prepare(point, met);
            });
            group.step(false);
            workers.each(slope.size(), i -> {
                TraineeSweep.back(slope.get(i).work, group.severityStep);
                slope.get(i).collect(point);
            });
            slope.forEach(sum::add);
            sum.addSeverities(group, covariance);
        }
        sum.write(vector, gradient);
    }

    private List<TraineeSlope> slopes(int group) {
        List<TraineeSlope> slope = slopes.get(group);
        if (slope.isEmpty()) {
            groups.get(group).trainees.forEach(work -> slope.add(new TraineeSlope(work)));
        }
        return slope;
    }

    /** Rows and columns of a square matrix. */
    static double[] subset(double[] matrix, int size, int[] index) {
        double[] part = new double[index.length * index.length];
        for (int v = 0; v < index.length; v++) {
            for (int w = 0; w < index.length; w++) {
                part[v * index.length + w] = matrix[index[v] * size + index[w]];
            }
        }
        return part;
    }

    /** Log prior kernels; adds their derivatives unless none are wanted. */
    private double priors(double[] vector, double[] gradient) {
        double sum = 0;
        for (Map.Entry<String, PsiPriors.Normal> prior : new TreeMap<>(priors.byGroup()).entrySet()) {
            String group = prior.getKey();
            if (layout.has(group)) {
                sum += group.equals("beta")
                        ? difficultyPrior(prior.getValue(), vector, gradient)
                        : groupPrior(group, prior.getValue(), vector, gradient);
            }
        }
        return sum;
    }

    private double groupPrior(String group, PsiPriors.Normal prior, double[] vector, double[] gradient) {
        double sum = 0;
        for (int i = 0; i < layout.length(group); i++) {
            int at = layout.start(group) + i;
            double z = (vector[at] - prior.mean(i)) / prior.sd(i);
            sum -= 0.5 * z * z;
            if (gradient.length > 0) {
                gradient[at] -= z / prior.sd(i);
            }
        }
        return sum;
    }

    private double difficultyPrior(PsiPriors.Normal prior, double[] vector, double[] gradient) {
        int free = layout.length("beta");
        int start = layout.start("beta");
        double last = 0;
        double sum = 0;
        for (int s = 0; s < free; s++) {
            last -= vector[start + s];
            double z = (vector[start + s] - prior.mean(s)) / prior.sd(s);
            sum -= 0.5 * z * z;
            if (gradient.length > 0) {
                gradient[start + s] -= z / prior.sd(s);
            }
        }
        double z = (last - prior.mean(free)) / prior.sd(free);
        for (int s = 0; s < free && gradient.length > 0; s++) {
            gradient[start + s] += z / prior.sd(free);
        }
        return sum - 0.5 * z * z;
    }
}
