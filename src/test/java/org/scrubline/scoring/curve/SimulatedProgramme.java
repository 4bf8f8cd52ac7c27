package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * An invented programme with a known truth that is not quite the model: every trainee has an own pace, an
 * autoregressive wobble, losses after leave that are relearned quickly, steps have own thresholds, supervisors differ in
 * severity, range and size of their overall impression, early steps are often the supervisor's by plan.
 */
final class SimulatedProgramme {

    static final int LEVELS = 5;
    static final int STEPS = 22;
    static final List<String> CRITICAL = List.of("S04", "S07", "S10", "S12", "S14", "S17");
    private static final double[] TAU = {-3.2, -1.7, -0.4, 1.8};
    private static final double[] GAMMA = {0.6, 0.4, 0.5};
    private static final double[] BAND_SHARE = {0.25, 0.3, 0.15};
    private static final int PHASES = 6;

    /** Spread of what all steps of one case share: the case itself and a usual supervisor's impression. */
    private static final double OVERALL_SD = Math.sqrt(0.25 * 0.25 + 0.45 * 0.45 + 0.1 * 0.1);

    private static final double[] DEVIATES = IntStream.range(0, 200)
            .mapToDouble(i -> NormalDistribution.of(0, 1).inverseCumulativeProbability((i + 0.5) / 200))
            .toArray();

    final List<ObservedScore> scores = new ArrayList<>();
    final double[][] level;
    final double[][] stepEffect;
    final double[] severity;
    final double[] beta = new double[STEPS];
    private final double[][] wobble = new double[STEPS][TAU.length];
    private final double[] stretch;
    private final double[] impression;
    private final Random random;
    private final String prefix;
    private final String cohort;

    /**
     * @param prefix put before every id, so that programmes can share one table
     * @param cases mean number of cases a trainee
     */
    SimulatedProgramme(String prefix, long seed, int trainees, int supervisors, int cases) {
        this(prefix, "t", seed, trainees, cases, supervisorHabits(new Random(seed ^ 0x5DEECE66DL), supervisors), seed);
    }

    /**
     * One cohort of a programme whose supervisors are given.
     *
     * @param cohort put before trainees' numbers
     * @param habits severity, stretch of the scale and impression size of each supervisor
     * @param sheet seed of the steps' difficulties and own thresholds
     */
    SimulatedProgramme(
            String prefix, String cohort, long seed, int trainees, int cases, double[][] habits, long sheet) {
        this.prefix = prefix;
        this.cohort = cohort;
        random = new Random(seed);
        severity = habits[0];
        stretch = habits[1];
        impression = habits[2];
        Random fixed = new Random(12345 + 7919 * sheet);
        double mean = 0;
        for (int s = 0; s < STEPS; s++) {
            beta[s] = 0.6 * fixed.nextGaussian();
            mean += beta[s] / STEPS;
            for (int k = 0; k < TAU.length; k++) {
                wobble[s][k] = 0.12 * fixed.nextGaussian();
            }
        }
        for (int s = 0; s < STEPS; s++) {
            beta[s] -= mean;
        }
        level = new double[trainees][];
        stepEffect = new double[trainees][STEPS];
        for (int t = 0; t < trainees; t++) {
            trainee(t, Math.max(8, (int) (cases * (0.4 + 1.2 * random.nextDouble()))));
        }
    }

    /** The programme of 14 trainees and 9 supervisors that benchmarks and comparisons measure; 17 000 to 18 000 scores. */
    static SimulatedProgramme usual() {
        return new SimulatedProgramme("", 4, 14, 9, 61);
    }

    static double[][] supervisorHabits(Random random, int count) {
        double[][] habits = new double[3][count];
        for (int v = 0; v < count; v++) {
            habits[0][v] = 0.5 * random.nextGaussian();
            habits[1][v] = Math.exp(0.15 * random.nextGaussian());
            habits[2][v] = Math.abs(0.45 + 0.1 * random.nextGaussian());
        }
        return habits;
    }

    /** Chance of the true level k or better on every critical step of the next plain-average case. */
    double trueWholeCase(int trainee, int afterCases, int k) {
        double l0 = level[trainee][Math.min(afterCases, level[trainee].length - 1)] - meanSeverity();
        for (int x = 0; x < GAMMA.length; x++) {
            l0 -= GAMMA[x] * BAND_SHARE[x];
        }
        double sum = 0;
        for (double deviate : DEVIATES) {
            double u = OVERALL_SD * deviate;
            double product = 1;
            for (String code : CRITICAL) {
                int s = Integer.parseInt(code.substring(1));
                double l = l0 + u + stepEffect[trainee][s] - beta[s];
                product *= 1 / (1 + Math.exp(TAU[k - 2] + wobble[s][k - 2] - l));
            }
            sum += product;
        }
        return sum / DEVIATES.length;
    }

    /** The same for one step. */
    double trueStep(int trainee, int afterCases, int s, int k) {
        double l = level[trainee][Math.min(afterCases, level[trainee].length - 1)] - meanSeverity();
        for (int x = 0; x < GAMMA.length; x++) {
            l -= GAMMA[x] * BAND_SHARE[x];
        }
        double sum = 0;
        for (double deviate : DEVIATES) {
            double u = OVERALL_SD * deviate;
            sum += 1 / (1 + Math.exp(TAU[k - 2] + wobble[s][k - 2] - l - u - stepEffect[trainee][s] + beta[s]));
        }
        return sum / DEVIATES.length;
    }

    double meanSeverity() {
        double sum = 0;
        for (double v : severity) {
            sum += v / severity.length;
        }
        return sum;
    }

    /** True level of the panel's reference supervisor, mean own step effect included, above threshold k. */
    double truePanelLevel(int trainee, int i, int k) {
        double mean = 0;
        for (double d : stepEffect[trainee]) {
            mean += d / STEPS;
        }
        return level[trainee][i] + mean - meanSeverity() - TAU[k - 2];
    }

    private void trainee(int t, int cases) {
        double[] gaps = gaps(cases);
        level[t] = path(cases, gaps);
        for (int s = 0; s < STEPS; s++) {
            stepEffect[t][s] = 0.4 * random.nextGaussian();
        }
        int met = Math.min(severity.length, 3 + random.nextInt(4));
        int[] own = random.ints(0, severity.length).distinct().limit(met).toArray();
        double[] view =
                random.doubles(severity.length).map(u -> 0.5 * (u - 0.5)).toArray();
        double[] share = random.doubles(met).map(u -> -Math.log(1 - u)).toArray();
        for (int i = 0; i < cases; i++) {
            List<Double> x = IntStream.range(0, GAMMA.length)
                    .mapToObj(k -> random.nextDouble() < BAND_SHARE[k] ? 1.0 : 0.0)
                    .toList();
            double excess = Math.min(Math.max(gaps[i] - 60, 0) / 30, 8);
            CaseContext context = new CaseContext(prefix + "c" + i, i, i, excess, x);
            double shared = 0.25 * random.nextGaussian();
            int v = own[draw(share)];
            score(t, i, v, 0, context, shared, view[v]);
            int second = own[draw(share)];
            if (random.nextDouble() < 0.05 && second != v) {
                score(t, i, second, 1, context, shared, view[second]);
            }
        }
    }

    private int draw(double[] share) {
        double total = 0;
        for (double s : share) {
            total += s;
        }
        double at = total * random.nextDouble();
        int i = 0;
        while (i < share.length - 1 && at > share[i]) {
            at -= share[i++];
        }
        return i;
    }

    private double[] gaps(int cases) {
        double[] gaps = new double[cases];
        for (int i = 1; i < cases; i++) {
            gaps[i] = -8 * Math.log(1 - random.nextDouble());
        }
        if (random.nextInt(7) == 0 && cases > 12) {
            gaps[cases / 3 + random.nextInt(cases / 3)] = 150 + 150 * random.nextDouble();
        }
        return gaps;
    }

    private double[] path(int cases, double[] gaps) {
        double start = -1.4 + 0.5 * random.nextGaussian();
        double gain = 4.1 + 0.7 * random.nextGaussian();
        double pace = Math.exp(Math.log(19) + 0.35 * random.nextGaussian());
        double[] path = new double[cases];
        double loss = 0;
        double wave = 0;
        for (int i = 0; i < cases; i++) {
            loss += gaps[i] > 60 ? Math.min(1.6, 0.25 * (gaps[i] - 60) / 30) : 0;
            loss *= Math.exp(-1 / 8.0);
            wave = 0.9 * wave + 0.1 * random.nextGaussian();
            path[i] = start + gain * -Math.expm1(-i / pace) - loss + wave;
        }
        return path;
    }

    private void score(int t, int i, int v, int which, CaseContext context, double shared, double view) {
        double base = level[t][i] + shared + impression[v] * random.nextGaussian() - severity[v] + view;
        for (int x = 0; x < GAMMA.length; x++) {
            base -= GAMMA[x] * context.complexity().get(x);
        }
        String assessment = prefix + cohort + t + "c" + i + "v" + which;
        boolean anything = false;
        int takenOver = -1;
        for (int s = 0; s < STEPS; s++) {
            int phase = s * PHASES / STEPS;
            boolean planned = phaseIsSupervisors(t, i, phase);
            boolean missing = planned || phase == takenOver || random.nextDouble() < 0.08;
            if (missing && !(s == STEPS - 1 && !anything)) {
                continue;
            }
            int y = draw(base + stepEffect[t][s] - beta[s], v, s);
            if (y == 1 && random.nextBoolean()) {
                takenOver = phase;
            }
            anything = true;
            scores.add(new ObservedScore(
                    assessment, prefix + cohort + t, prefix + "v" + v, context, String.format("S%02d", s), y));
        }
    }

    private boolean phaseIsSupervisors(int t, int i, int phase) {
        double chance = Math.max(0, 0.5 - 0.05 * i);
        return new Random(31L * (t * 1000 + i) + phase).nextDouble() < chance;
    }

    private int draw(double l, int v, int s) {
        double mean = (TAU[0] + TAU[1] + TAU[2] + TAU[3]) / 4;
        double u = random.nextDouble();
        int y = 1;
        for (int k = 0; k < TAU.length; k++) {
            double tau = mean + stretch[v] * (TAU[k] - mean) + wobble[s][k];
            y += u < 1 / (1 + Math.exp(tau - l)) ? 1 : 0;
        }
        return y;
    }

    ScoreTable table() {
        return ScoreTable.of(LEVELS, List.of(), scores);
    }
}
