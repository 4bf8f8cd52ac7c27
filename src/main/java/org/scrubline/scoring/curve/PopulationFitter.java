package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Searches the population parameters and freezes the result. */
final class PopulationFitter {

    private static final double TOLERANCE = 1e-3;

    private final ScoreTable table;
    private final ModelSettings settings;
    private final PsiLayout layout;
    private final ProgrammeLikelihood likelihood;

    PopulationFitter(ScoreTable table, ModelSettings settings, Workers workers) {
        this.table = table;
        this.settings = settings;
        layout = new PsiLayout(table, settings.terms(), settings.supervisorRange(), settings.supervisorHalo());
        likelihood = new ProgrammeLikelihood(table, layout, settings.priors(), settings.kappa(), workers);
    }

    PopulationFit fit(Psi start, Estimation estimation) {
        double[] vector = layout.vector(start.restrictedTo(settings.terms()));
        if (estimation == Estimation.GIVEN || table.scores() == 0) {
            Psi psi = start.restrictedTo(settings.terms());
            double value = likelihood.solve(
                    new ModelPoint(psi, settings.kappa(), table.supervisors().size()));
            return freeze(psi, value, Estimation.GIVEN);
        }
        int[] free = free(estimation);
        double[] scale = layout.scales(table);
        double[] from = new double[free.length];
        for (int i = 0; i < free.length; i++) {
            from[i] = vector[free[i]] / scale[free[i]];
        }
        double[] gradient = new double[vector.length];
        double[] best = Lbfgs.minimise(
                (z, slope) -> {
                    place(z, free, scale, vector);
                    double value = likelihood.evaluate(vector, gradient);
                    for (int i = 0; i < free.length; i++) {
                        slope[i] = -gradient[free[i]] * scale[free[i]];
                    }
                    return -value;
                },
                from,
                TOLERANCE);
        place(best, free, scale, vector);
        double value = likelihood.evaluate(vector, new double[0]);
        return freeze(layout.psi(vector).restrictedTo(settings.terms()), value, estimation);
    }

    /** Gradient at given parameters, in the groups of the layout. */
    double[] gradient(Psi psi) {
        double[] gradient = new double[layout.size];
        likelihood.evaluate(layout.vector(psi.restrictedTo(settings.terms())), gradient);
        return gradient;
    }

    PsiLayout layout() {
        return layout;
    }

    private static void place(double[] z, int[] free, double[] scale, double[] vector) {
        for (int i = 0; i < free.length; i++) {
            vector[free[i]] = z[i] * scale[free[i]];
        }
    }

    private int[] free(Estimation estimation) {
        List<Integer> free = new ArrayList<>();
        for (String group : layout.groups()) {
            for (int i = 0; estimation.frees(group) && i < layout.length(group); i++) {
                free.add(layout.start(group) + i);
            }
        }
        return free.stream().mapToInt(Integer::intValue).toArray();
    }

    private PopulationFit freeze(Psi psi, double value, Estimation estimation) {
        List<SeverityGroup> groups = new ArrayList<>();
        for (int g = 0; g < likelihood.groups.size(); g++) {
            groups.add(group(likelihood.groups.get(g), likelihood.groupSupervisors.get(g)));
        }
        return new PopulationFit(
                CompetencyModel.VERSION,
                settings.terms(),
                settings.kappa(),
                estimation,
                psi,
                table.steps(),
                table.supervisors(),
                value,
                table.trainees().size(),
                table.assessments(),
                table.scores(),
                caseMix(),
                groups);
    }

    private SeverityGroup group(JointSolution solution, int[] supervisors) {
        List<SeverityGroup.Share> shares = new ArrayList<>();
        for (TraineeWork t : solution.trainees) {
            double kappa = t.pairPrecision;
            List<Double> pull = new ArrayList<>();
            for (int v = 0; v < t.supervisors.length; v++) {
                pull.add(-kappa * t.effect[t.pairColumn + v]);
            }
            List<Integer> places = Arrays.stream(t.blockSupervisors).boxed().toList();
            shares.add(new SeverityGroup.Share(
                    table.trainees().get(t.trainee), places, pull, list(JointSolution.information(t))));
        }
        double total = 0;
        for (double c : solution.severityCovariance()) {
            total += c;
        }
        List<String> ids =
                Arrays.stream(supervisors).mapToObj(table.supervisors()::get).toList();
        return new SeverityGroup(ids, list(solution.severity), list(solution.severityPrecision()), total, shares);
    }

    private static List<Double> list(double[] values) {
        return Arrays.stream(values).boxed().toList();
    }

    private List<Double> caseMix() {
        double[] sum = new double[table.covariates()];
        for (int j = 0; j < table.assessments(); j++) {
            Dense.add(sum, 0, table.complexity, j * sum.length, 0, sum.length, 1);
        }
        List<Double> mean = new ArrayList<>();
        for (double s : sum) {
            mean.add(table.assessments() == 0 ? 0 : s / table.assessments());
        }
        return mean;
    }
}
