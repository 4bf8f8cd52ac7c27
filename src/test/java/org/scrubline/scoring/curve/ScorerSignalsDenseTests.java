package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.hipparchus.linear.RealVector;
import org.junit.jupiter.api.Test;

/**
 * The statistics inside the signals on scorers, worked out again from the dense solution of the same model. v1 gives
 * one level for all steps, v2 is strict and wavers, v3 keeps near the case's mean, v0 and v4 score as the model does.
 */
class ScorerSignalsDenseTests {

    private static final List<String> STEPS =
            IntStream.range(0, 9).mapToObj(s -> "S" + s).toList();
    private static final int CASES = 20;
    private static final Psi PSI = psi(List.of(0.0, 0.1, 0.0, -0.1, 0.0), List.of(0.0, 0.3, 0.6, 0.26, 0.9));

    private final ScoreTable table = table();
    private final PopulationFit fit = new CompetencyModel(ModelSettings.standard(5)).fit(table, PSI, Estimation.GIVEN);
    private final DenseMode dense = new DenseMode(table, PSI);

    private static Psi psi(List<Double> range, List<Double> halo) {
        return new Psi(
                List.of(-1.9, -0.3, 1.0, 3.1),
                List.of(0.8, -0.7, 0.3, -0.4, 0.0, 0.6, -0.6, 0.5, -0.5),
                List.of(),
                3.5,
                0.1,
                0.6,
                0.8,
                0.5,
                0.5,
                0.6,
                0.15,
                0.01,
                0.01,
                range,
                halo);
    }

    private static ScoreTable table() {
        Random random = new Random(77);
        List<ObservedScore> scores = new ArrayList<>();
        for (int t = 0; t < 2; t++) {
            for (int i = 0; i < CASES; i++) {
                int v = (i + t) % 5;
                CaseContext context = new CaseContext("c" + i, i, i, 0, List.of());
                double level = -1
                        + 3.5 * (1 - Math.exp(-i / 20.0))
                        + (v == 2 ? -3.5 : 0)
                        + (v == 2 ? 1.2 : 0.4) * random.nextGaussian();
                int common = level(level);
                for (int s = 0; s < STEPS.size(); s++) {
                    double noise = Math.log(1 / random.nextDouble() - 1) * (v == 3 ? 0.3 : 1);
                    int y = v == 1
                            ? common
                            : level(level - (v == 3 ? 0 : PSI.difficulty().get(s)) + noise);
                    if (s < 8 || v != 1 || i % 2 == 0) {
                        scores.add(new ObservedScore("t" + t + "c" + i, "t" + t, "v" + v, context, STEPS.get(s), y));
                    }
                }
            }
        }
        return ScoreTable.of(5, STEPS, scores);
    }

    private static int level(double location) {
        return 1 + (int) PSI.thresholds().stream().filter(tau -> location > tau).count();
    }

    private int[] assessments(int v) {
        return IntStream.range(0, table.assessments())
                .filter(j -> table.supervisor[j] == v)
                .toArray();
    }

    private int[] scores(int j) {
        return IntStream.range(table.scoreStart[j], table.scoreStart[j + 1]).toArray();
    }

    /** Chance of level y or better on score k. */
    private double atLeast(int k, int y, int v) {
        double mean =
                PSI.thresholds().stream().mapToDouble(tau -> tau).average().orElseThrow();
        double stretch = Math.exp(PSI.range().get(v));
        return y == 1
                ? 1
                : y == 6 ? 0 : DenseMode.sigmoid(dense.location(k) - mean - stretch * (PSI.threshold(y) - mean));
    }

    private double oneLevel(int v) {
        double excess = 0;
        double variance = 0;
        for (int j : assessments(v)) {
            double chance = 0;
            for (int y = 1; y <= 5; y++) {
                double product = 1;
                for (int k : scores(j)) {
                    product *= atLeast(k, y, v) - atLeast(k, y + 1, v);
                }
                chance += product;
            }
            boolean same =
                    Arrays.stream(scores(j)).map(k -> table.span[k]).distinct().count() == 1;
            excess += (same ? 1 : 0) - chance;
            variance += chance * (1 - chance);
        }
        return excess / Math.sqrt(Math.max(variance, 0.25));
    }

    private double flatness(int v) {
        double squares = 0;
        double expected = 0;
        double prior = Math.pow(PSI.assessmentSd() * Math.exp(PSI.halo().get(v)), 2);
        for (int j : assessments(v)) {
            double total = 0;
            for (int k : scores(j)) {
                int y = ScoreTable.lowest(table.span[k]);
                double above = atLeast(k, y, v);
                double beyond = atLeast(k, y + 1, v);
                squares += Math.pow(1 - above - beyond, 2);
                total += above * (1 - above) + beyond * (1 - beyond);
            }
            double own = prior / (1 + prior * total);
            expected += total * (1 - own * total / scores(j).length);
        }
        return squares / expected;
    }

    private double impression(int v) {
        double halo = PSI.halo().get(v);
        double prior = Math.pow(PSI.assessmentSd() * Math.exp(halo), 2);
        double left = Arrays.stream(assessments(v))
                .mapToDouble(j -> dense.sd(dense.one("overall" + j)))
                .map(sd -> sd * sd)
                .average()
                .orElseThrow();
        double known = 1 - left / prior;
        return (halo - 0.25) * Math.sqrt(2 * assessments(v).length * known * known + 1 / 0.09);
    }

    private static List<Flag> of(List<Flag> flags, Flag.Kind kind, int v) {
        return flags.stream()
                .filter(f -> f.kind() == kind && f.subject().equals("v" + v))
                .toList();
    }

    private static void named(List<Flag> flags, boolean expected, double value, double limit) {
        if (expected) {
            assertThat(flags).singleElement().satisfies(flag -> {
                assertThat(flag.value()).isCloseTo(value, within(1e-6 * Math.max(1, Math.abs(value))));
                assertThat(flag.limit()).isEqualTo(limit);
            });
        } else {
            assertThat(flags).isEmpty();
        }
    }

    @Test
    void everyStatisticIsThatOfTheDenseSolution() {
        List<Flag> flags = ScorerSignals.of(fit, table);
        int[] raised = new int[4];
        for (int v = 0; v < 5; v++) {
            double z = oneLevel(v);
            raised[0] += z > 4 ? 1 : 0;
            named(of(flags, Flag.Kind.ONE_LEVEL_FOR_ALL, v), z > 4, z, 4);
            double ratio = flatness(v);
            raised[1] += ratio < 0.9 ? 1 : 0;
            named(of(flags, Flag.Kind.FLATTER_THAN_EXPECTED, v), ratio < 0.9, ratio, 0.9);
            double impression = impression(v);
            raised[2] += impression > 1.28 ? 1 : 0;
            named(of(flags, Flag.Kind.ONE_OVERALL_IMPRESSION, v), impression > 1.28, impression, 1.28);
            RealVector away = dense.one("severity" + v).subtract(dense.panel());
            NormalDistribution law = NormalDistribution.of(dense.mean(away), dense.sd(away));
            double sure = law.survivalProbability(0.7) + law.cumulativeProbability(-0.7);
            raised[3] += sure > 0.9 ? 1 : 0;
            named(of(flags, Flag.Kind.SCORES_DIFFER, v), sure > 0.9, dense.mean(away), 0.7);
        }
        assertThat(raised).as("signals raised, by kind").doesNotContain(0, 5);
    }

    @Test
    void eightAssessmentsAreNeededForFlatness() {
        List<ObservedScore> few = new ArrayList<>();
        for (int i = 0; i < 14; i++) {
            for (int s = 0; s < STEPS.size(); s++) {
                String v = i % 2 == 0 ? "even" : "odd";
                CaseContext context = new CaseContext("c" + i, i, i, 0, List.of());
                few.add(new ObservedScore("a" + i, "t", v, context, STEPS.get(s), 3));
            }
        }
        assertThat(flat(few)).isEmpty();
        for (int s = 0; s < STEPS.size(); s++) {
            CaseContext context = new CaseContext("c14", 14, 14, 0, List.of());
            few.add(new ObservedScore("a14", "t", "even", context, STEPS.get(s), 3));
        }
        assertThat(flat(few)).containsExactly("even");
    }

    private static List<String> flat(List<ObservedScore> scores) {
        ScoreTable table = ScoreTable.of(5, STEPS, scores);
        PopulationFit fit = new CompetencyModel(ModelSettings.standard(5))
                .fit(table, Psi.shipped(5, STEPS.size(), 0), Estimation.GIVEN);
        return ScorerSignals.of(fit, table).stream()
                .filter(f -> f.kind() == Flag.Kind.FLATTER_THAN_EXPECTED)
                .map(Flag::subject)
                .toList();
    }

    /** Seven steps are too few to say that one level for all is odd. */
    @Test
    void oneLevelForAllNeedsEightSteps() {
        for (int steps : new int[] {7, 8}) {
            List<ObservedScore> scores = new ArrayList<>();
            for (int i = 0; i < 12; i++) {
                for (int s = 0; s < steps; s++) {
                    CaseContext context = new CaseContext("c" + i, i, i, 0, List.of());
                    scores.add(new ObservedScore("a" + i, "t", "v", context, STEPS.get(s), 2 + i % 3));
                }
            }
            ScoreTable table = ScoreTable.of(5, STEPS, scores);
            PopulationFit fit = new CompetencyModel(ModelSettings.standard(5))
                    .fit(table, Psi.shipped(5, STEPS.size(), 0), Estimation.GIVEN);
            assertThat(ScorerSignals.of(fit, table).stream().anyMatch(f -> f.kind() == Flag.Kind.ONE_LEVEL_FOR_ALL))
                    .isEqualTo(steps == 8);
        }
    }

    /** Earlier and later half by time, whoever was scored; the later half becomes a supervisor of its own. */
    @Test
    void aShiftIsTheDifferenceOfTheHalvesInTheDenseSolution() {
        List<ObservedScore> scores = new ArrayList<>();
        Random random = new Random(5);
        for (int t = 0; t < 2; t++) {
            for (int i = 0; i < CASES; i++) {
                CaseContext context = new CaseContext("c" + i, i, i, 0, List.of());
                String v = i % 2 == 0 ? "v0" : "v" + (1 + t);
                for (int s = 0; s < STEPS.size(); s++) {
                    double location = -1 + 0.12 * i + Math.log(1 / random.nextDouble() - 1);
                    double change = v.equals("v0") && i >= 10 ? 1.5 : 0;
                    scores.add(new ObservedScore(
                            "t" + t + "c" + i, "t" + t, v, context, STEPS.get(s), level(location - change)));
                }
            }
        }
        ScoreTable whole = ScoreTable.of(5, STEPS, scores);
        Psi given = psi(List.of(0.1, 0.0, -0.1), List.of(0.2, 0.0, 0.1));
        PopulationFit fitted = new CompetencyModel(ModelSettings.standard(5)).fit(whole, given, Estimation.GIVEN);
        boolean[] later = new boolean[whole.assessments()];
        for (int j = 0; j < later.length; j++) {
            later[j] = whole.supervisor[j] == 0 && order(whole, j) >= 10;
        }
        ScoreTable split = whole.withExtraSupervisor("later", later);
        Psi psi = fitted.psiFor(split).withHabitsOf(0, 3);
        DenseMode halves = new DenseMode(split, psi);
        RealVector difference = halves.one("severity3").subtract(halves.one("severity0"));
        List<Flag> flags = ScorerSignals.shifts(fitted, whole);
        assertThat(Math.abs(halves.mean(difference))).isGreaterThan(Math.max(0.4, 2 * halves.sd(difference)));
        assertThat(flags).singleElement().satisfies(flag -> {
            assertThat(flag.kind()).isEqualTo(Flag.Kind.SCORING_SHIFTED);
            assertThat(flag.subject()).isEqualTo("v0");
            assertThat(flag.value()).isCloseTo(halves.mean(difference), within(1e-6));
        });
    }

    private static long order(ScoreTable table, int j) {
        int i = 0;
        while (table.assessmentStart[i + 1] <= j) {
            i++;
        }
        return table.caseOrder[i];
    }
}
