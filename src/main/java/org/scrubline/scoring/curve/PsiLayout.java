package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The population parameters as one vector for the optimiser: thresholds as (τ_2, log gaps), difficulties without the
 * last (it is minus the sum of the others), standard deviations and walk variances as logarithms. Groups appear in a
 * fixed order; terms left out have none.
 */
final class PsiLayout {

    /** Logarithms stay within this: no search without priors may leave the range of usable numbers. */
    private static final double WIDEST_LOG = 5;

    final int levels;
    final int steps;
    final int covariates;
    final int supervisors;
    final int size;
    private final Map<String, Integer> start = new LinkedHashMap<>();
    private final Map<String, Integer> length = new LinkedHashMap<>();

    PsiLayout(ScoreTable table, Terms terms, boolean range, boolean halo) {
        levels = table.levels;
        steps = table.steps.size();
        covariates = table.covariates;
        supervisors = table.supervisors.size();
        int at = 0;
        at = put("tau", levels - 1, true, at);
        at = put("beta", Math.max(steps - 1, 0), true, at);
        at = put("gamma", covariates, true, at);
        at = put("mu_g", 1, terms.growth(), at);
        at = put("ls_g", 1, terms.growth(), at);
        at = put("phi", 1, terms.gap(), at);
        at = put("ls_a", 1, true, at);
        at = put("lq", 1, terms.chain(), at);
        at = put("lqg", 1, terms.chain() && terms.gap(), at);
        at = put("ls_d", 1, terms.traineeStep(), at);
        at = put("ls_u", 1, terms.assessment(), at);
        at = put("ls_l", 1, true, at);
        at = put("ls_n", 1, terms.traineeSupervisor(), at);
        at = put("rho", supervisors, range, at);
        size = put("hal", supervisors, halo && terms.assessment(), at);
    }

    private int put(String group, int count, boolean present, int at) {
        if (present) {
            start.put(group, at);
            length.put(group, count);
        }
        return present ? at + count : at;
    }

    boolean has(String group) {
        return start.containsKey(group);
    }

    /** First place of a group, or -1. */
    int start(String group) {
        return start.getOrDefault(group, -1);
    }

    int length(String group) {
        return length.getOrDefault(group, 0);
    }

    Iterable<String> groups() {
        return start.keySet();
    }

    double[] vector(Psi psi) {
        double[] v = new double[size];
        fill(v, "tau", logGaps(psi.thresholds()));
        fill(v, "beta", array(psi.difficulty()));
        fill(v, "gamma", array(psi.complexity()));
        fill(v, "mu_g", psi.gain());
        fill(v, "phi", psi.gapLoss());
        fill(v, "ls_a", Math.log(psi.levelSd()));
        fill(v, "ls_g", Math.log(psi.gainSd()));
        fill(v, "ls_d", Math.log(psi.stepSd()));
        fill(v, "ls_u", Math.log(psi.assessmentSd()));
        fill(v, "ls_l", Math.log(psi.severitySd()));
        fill(v, "ls_n", Math.log(psi.pairSd()));
        fill(v, "lq", Math.log(psi.walk()));
        fill(v, "lqg", Math.log(psi.gapWalk()));
        fill(v, "rho", array(psi.range()));
        fill(v, "hal", array(psi.halo()));
        return v;
    }

    private void fill(double[] v, String group, double... values) {
        if (has(group)) {
            System.arraycopy(values, 0, v, start(group), Math.min(values.length, length(group)));
        }
    }

    Psi psi(double[] v) {
        List<Double> thresholds = new ArrayList<>();
        double tau = 0;
        for (int k = 0; k < levels - 1; k++) {
            tau = k == 0 ? within(v[0], 50) : tau + Math.exp(within(v[k], WIDEST_LOG));
            thresholds.add(tau);
        }
        List<Double> beta = list(v, "beta");
        if (steps > 0) {
            double sum = 0;
            for (double b : beta) {
                sum += b;
            }
            beta.add(-sum);
        }
        return new Psi(
                thresholds,
                beta,
                list(v, "gamma"),
                value(v, "mu_g"),
                value(v, "phi"),
                exp(v, "ls_a"),
                exp(v, "ls_g"),
                exp(v, "ls_d"),
                exp(v, "ls_u"),
                exp(v, "ls_l"),
                exp(v, "ls_n"),
                exp(v, "lq"),
                exp(v, "lqg"),
                list(v, "rho"),
                list(v, "hal"));
    }

    private List<Double> list(double[] v, String group) {
        List<Double> values = new ArrayList<>();
        for (int i = 0; i < length(group); i++) {
            values.add(v[start(group) + i]);
        }
        return values;
    }

    private double value(double[] v, String group) {
        return has(group) ? v[start(group)] : 0;
    }

    private double exp(double[] v, String group) {
        return has(group) ? Math.exp(Math.max(-40, Math.min(WIDEST_LOG, v[start(group)]))) : 0;
    }

    private static double within(double value, double bound) {
        return Math.max(-bound, Math.min(bound, value));
    }

    /** (τ_2, log gaps) of rising thresholds. */
    static double[] logGaps(List<Double> thresholds) {
        double[] v = new double[thresholds.size()];
        for (int k = 0; k < v.length; k++) {
            v[k] = k == 0 ? thresholds.get(0) : Math.log(thresholds.get(k) - thresholds.get(k - 1));
        }
        return v;
    }

    static double[] array(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** Typical size of each entry's uncertainty: the optimiser works on the vector divided by this. */
    double[] scales(ScoreTable table) {
        double scores = Math.max(table.scores(), 1);
        double trainees = Math.max(table.trainees.size(), 1);
        double assessments = Math.max(table.assessments(), 1);
        double[] scale = new double[size];
        Arrays.fill(scale, 1);
        scale(scale, "tau", 1 / Math.sqrt(0.2 * scores));
        scale(scale, "beta", 1 / Math.sqrt(0.3 * scores / Math.max(steps, 1)));
        scale(scale, "gamma", 1 / Math.sqrt(0.05 * scores));
        scale(scale, "mu_g", 0.5 / Math.sqrt(trainees));
        scale(scale, "phi", 0.3 / Math.sqrt(trainees));
        scale(scale, "ls_a", 1 / Math.sqrt(2 * trainees));
        scale(scale, "ls_g", 1.5 / Math.sqrt(2 * trainees));
        scale(scale, "lq", 2 / Math.sqrt(2 * trainees));
        scale(scale, "lqg", 2 / Math.sqrt(2 * trainees));
        scale(scale, "ls_d", 1 / Math.sqrt(trainees * Math.max(steps, 1)));
        scale(scale, "ls_u", 1.5 / Math.sqrt(2 * assessments));
        scale(scale, "ls_l", 1 / Math.sqrt(2.0 * Math.max(supervisors, 1)));
        scale(scale, "ls_n", 0.2);
        scale(scale, "rho", 0.05);
        scale(scale, "hal", 0.1);
        return scale;
    }

    private void scale(double[] scale, String group, double value) {
        if (has(group)) {
            Arrays.fill(scale, start(group), start(group) + length(group), value);
        }
    }
}
