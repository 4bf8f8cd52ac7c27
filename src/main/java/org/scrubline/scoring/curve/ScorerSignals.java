package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.statistics.distribution.NormalDistribution;

/** Signals on how supervisors score, from one fit and the scores it was made of. A supervisor sees only the own ones. */
public final class ScorerSignals {

    private static final double DIFFERENCE = 0.7;
    private static final double DIFFERENCE_SURE = 0.9;
    private static final double IMPRESSION = 0.25;
    private static final double IMPRESSION_SDS = 1.28;
    private static final double IMPRESSION_PRIOR_VARIANCE = 0.09;
    private static final double ONE_LEVEL_SDS = 4;
    private static final int ONE_LEVEL_STEPS = 8;
    private static final double FLAT = 0.9;
    private static final int HALF = 8;
    private static final double SHIFT_SDS = 2;
    private static final double SHIFT_LEAST = 0.4;

    private final PopulationFit fit;
    private final ScoreTable table;
    private final int[] assessments;
    private final double[] equal;
    private final double[] equalExpected;
    private final double[] equalVariance;
    private final double[] residual;
    private final double[] residualExpected;
    private final double[] impressionVariance;
    private final double[] scratch;

    private ScorerSignals(PopulationFit fit, ScoreTable table) {
        this.fit = fit;
        this.table = table;
        int supervisors = table.supervisors().size();
        assessments = new int[supervisors];
        equal = new double[supervisors];
        equalExpected = new double[supervisors];
        equalVariance = new double[supervisors];
        residual = new double[supervisors];
        residualExpected = new double[supervisors];
        impressionVariance = new double[supervisors];
        scratch = new double[table.levels()];
    }

    /**
     * All signals but the shift over time.
     *
     * @param fit made of the table's scores
     * @param table the scores
     * @return flags, supervisor by supervisor in the table's order; their rules stand at {@link Flag.Kind}
     * @throws IllegalArgumentException when levels or complexity values differ from the fit's
     */
    public static List<Flag> of(PopulationFit fit, ScoreTable table) {
        ScorerSignals signals = new ScorerSignals(fit, table);
        table.trainees().forEach(signals::collect);
        List<Flag> flags = new ArrayList<>();
        for (int v = 0; v < table.supervisors().size(); v++) {
            signals.judge(v, flags);
        }
        return flags;
    }

    private void collect(String trainee) {
        SmoothedTrainee smoothed = SmoothedTrainee.of(fit, table, trainee);
        TraineeWork t = smoothed.work;
        TraineeSlope slope = new TraineeSlope(t);
        slope.prepare(smoothed.point, smoothed.severityCovariance);
        for (int i = 0; i < t.cases; i++) {
            int first = table.assessmentStart[t.caseOffset + i] - t.assessmentOffset;
            int end = table.assessmentStart[t.caseOffset + i + 1] - t.assessmentOffset;
            for (int j = first; j < end; j++) {
                t.thresholds(smoothed.point, i, j);
                int v = table.supervisor[t.assessmentOffset + j];
                assessments[v]++;
                impressionVariance[v] += slope.overallVariance(j);
                residuals(t, j, v);
                oneLevel(t, j, v);
            }
        }
    }

    private void residuals(TraineeWork t, int j, int v) {
        int first = table.scoreStart[t.assessmentOffset + j];
        int end = table.scoreStart[t.assessmentOffset + j + 1];
        double taken = t.overallVariance[j] * t.totalWeight[j] / (end - first);
        for (int k = first; k < end; k++) {
            double own = t.stepFactor[table.step[k]];
            double ga = 1 / (1 + t.thresholdFactor[ScoreTable.lowest(table.span[k])] * own);
            double gb = 1 / (1 + t.thresholdFactor[ScoreTable.highest(table.span[k]) + 1] * own);
            residual[v] += (1 - ga - gb) * (1 - ga - gb);
            residualExpected[v] += t.weight[k - t.scoreOffset] * (1 - taken);
        }
    }

    /** Chance that all steps of an assessment get one level, against whether they did. */
    private void oneLevel(TraineeWork t, int j, int v) {
        int first = table.scoreStart[t.assessmentOffset + j];
        int end = table.scoreStart[t.assessmentOffset + j + 1];
        if (end - first < ONE_LEVEL_STEPS) {
            return;
        }
        Arrays.fill(scratch, 1);
        boolean same = true;
        for (int k = first; k < end; k++) {
            same &= table.span[k] == table.span[first];
            double above = 1;
            for (int y = 1; y <= table.levels(); y++) {
                double next =
                        y == table.levels() ? 0 : 1 / (1 + t.thresholdFactor[y + 1] * t.stepFactor[table.step[k]]);
                scratch[y - 1] *= above - next;
                above = next;
            }
        }
        double chance = Math.min(1, Arrays.stream(scratch).sum());
        equal[v] += same ? 1 : 0;
        equalExpected[v] += chance;
        equalVariance[v] += chance * (1 - chance);
    }

    private void judge(int v, List<Flag> flags) {
        String id = table.supervisors().get(v);
        differs(id, flags);
        if (assessments[v] == 0) {
            return;
        }
        impression(v, id, flags);
        double z = (equal[v] - equalExpected[v]) / Math.sqrt(Math.max(equalVariance[v], 0.25));
        if (z > ONE_LEVEL_SDS) {
            flags.add(new Flag(Flag.Kind.ONE_LEVEL_FOR_ALL, id, z, ONE_LEVEL_SDS, ""));
        }
        double ratio = residual[v] / residualExpected[v];
        if (ratio < FLAT && assessments[v] >= HALF) {
            flags.add(new Flag(Flag.Kind.FLATTER_THAN_EXPECTED, id, ratio, FLAT, ""));
        }
    }

    private void differs(String id, List<Flag> flags) {
        for (SeverityGroup group : fit.groups()) {
            int v = group.supervisors().indexOf(id);
            if (v >= 0 && group.supervisors().size() > 1) {
                int size = group.supervisors().size();
                double[] e = new double[size];
                Arrays.fill(e, -1.0 / fit.supervisors().size());
                e[v] += 1;
                double sd = Math.sqrt(Math.max(Dense.form(e, group.covariance(), e, size), 1e-12));
                double away = group.severity().get(v) - fit.panelSeverity();
                NormalDistribution normal = NormalDistribution.of(away, sd);
                double sure = normal.survivalProbability(DIFFERENCE) + normal.cumulativeProbability(-DIFFERENCE);
                if (sure > DIFFERENCE_SURE) {
                    flags.add(new Flag(Flag.Kind.SCORES_DIFFER, id, away, DIFFERENCE, ""));
                }
            }
        }
    }

    private void impression(int v, String id, List<Flag> flags) {
        int place = fit.supervisors().indexOf(id);
        if (place < 0 || place >= fit.psi().halo().size()) {
            return;
        }
        double halo = fit.psi().halo().get(place);
        double prior = Math.pow(fit.psi().assessmentSd() * Math.exp(halo), 2);
        double known = Math.max(0, 1 - impressionVariance[v] / assessments[v] / Math.max(prior, 1e-12));
        double precision = 2 * assessments[v] * known * known + 1 / IMPRESSION_PRIOR_VARIANCE;
        double z = (halo - IMPRESSION) * Math.sqrt(precision);
        if (z > IMPRESSION_SDS) {
            flags.add(new Flag(Flag.Kind.ONE_OVERALL_IMPRESSION, id, z, IMPRESSION_SDS, ""));
        }
    }

    /**
     * Shift of each supervisor's severity between the earlier and later half of the own assessments, with everybody
     * else's scores solved anew at the fitted population parameters, one solution of the programme a supervisor. Needs
     * cases whose {@code order} is comparable between trainees (time) and at least eight assessments in each half.
     *
     * @param fit made of the table's scores
     * @param table the scores
     * @return flags in the table's order of supervisors
     * @throws IllegalArgumentException when levels or complexity values differ from the fit's
     */
    public static List<Flag> shifts(PopulationFit fit, ScoreTable table) {
        List<Flag> flags = new ArrayList<>();
        for (int v = 0; v < table.supervisors().size(); v++) {
            boolean[] later = laterHalf(table, v);
            if (later.length > 0) {
                shift(fit, table, v, later, flags);
            }
        }
        return flags;
    }

    private static boolean[] laterHalf(ScoreTable table, int supervisor) {
        List<long[]> own = new ArrayList<>();
        for (int i = 0; i < table.caseIds.length; i++) {
            for (int j = table.assessmentStart[i]; j < table.assessmentStart[i + 1]; j++) {
                if (table.supervisor[j] == supervisor) {
                    own.add(new long[] {table.caseOrder[i], j});
                }
            }
        }
        if (own.size() < 2 * HALF) {
            return new boolean[0];
        }
        own.sort((a, b) -> a[0] != b[0] ? Long.compare(a[0], b[0]) : Long.compare(a[1], b[1]));
        boolean[] later = new boolean[table.assessments()];
        own.subList(own.size() / 2, own.size()).forEach(entry -> later[(int) entry[1]] = true);
        return later;
    }

    private static void shift(PopulationFit fit, ScoreTable table, int v, boolean[] later, List<Flag> flags) {
        String id = table.supervisors().get(v);
        ScoreTable split = table.withExtraSupervisor(id + " (later)", later);
        Psi psi = fit.psiFor(split).withHabitsOf(v, split.supervisors().size() - 1);
        ModelSettings settings = new ModelSettings(fit.terms(), fit.kappa(), true, true, PsiPriors.none());
        PopulationFit halves = new PopulationFitter(split, settings, Workers.ONE).fit(psi, Estimation.GIVEN);
        for (SeverityGroup group : halves.groups()) {
            int early = group.supervisors().indexOf(id);
            int late = group.supervisors().indexOf(id + " (later)");
            if (early >= 0 && late >= 0) {
                int size = group.supervisors().size();
                double[] e = new double[size];
                e[late] = 1;
                e[early] = -1;
                double sd = Math.sqrt(Dense.form(e, group.covariance(), e, size));
                double difference =
                        group.severity().get(late) - group.severity().get(early);
                if (Math.abs(difference) > SHIFT_LEAST && Math.abs(difference) > SHIFT_SDS * sd) {
                    flags.add(new Flag(Flag.Kind.SCORING_SHIFTED, id, difference, SHIFT_LEAST, ""));
                }
            }
        }
    }
}
