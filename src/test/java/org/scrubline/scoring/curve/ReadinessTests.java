package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.IntBinaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ReadinessTests {

    private static final List<String> STEPS =
            IntStream.range(0, 12).mapToObj(i -> "S" + i).toList();
    private static final List<String> CRITICAL = List.of("S1", "S4", "S9");
    private static final ProcedureStandard STANDARD = ProcedureStandard.usual(CRITICAL);

    private final List<ObservedScore> scores = new ArrayList<>();

    private void record(String trainee, int supervisors, int cases, IntBinaryOperator level) {
        for (int i = 0; i < cases; i++) {
            CaseContext context = new CaseContext("c" + i, i, i, 0, List.of(0.0, 0.0, 0.0));
            for (int s = 0; s < STEPS.size(); s++) {
                scores.add(new ObservedScore(
                        trainee + i, trainee, "v" + i % supervisors, context, STEPS.get(s), level.applyAsInt(i, s)));
            }
        }
    }

    private ScoreTable table() {
        return ScoreTable.of(5, STEPS, scores);
    }

    private PopulationFit fit() {
        return new CompetencyModel(ModelSettings.standard(5)).fit(table(), Psi.shipped(5, 12, 3), Estimation.GIVEN);
    }

    private List<Readiness> readiness(String trainee) {
        return CompetencyModel.smooth(fit(), table(), trainee, STANDARD).readiness();
    }

    private static int able(int i, int s) {
        return i < 8 ? 3 + (i + s) % 2 : (i + s) % 6 == 0 ? 4 : 5;
    }

    private static int middling(int i, int s) {
        return i < 8 ? 2 + (i + s) % 2 : 3 + (i + s) % 2;
    }

    @Test
    void theThreePhrasesFollowAssuranceAndEvidence() {
        record("able", 4, 30, ReadinessTests::able);
        record("middling", 4, 30, ReadinessTests::middling);
        record("fewScorers", 3, 30, ReadinessTests::able);
        record("fewCases", 2, 4, ReadinessTests::able);
        assertThat(readiness("able")).allSatisfy(r -> {
            assertThat(r.assurance()).isGreaterThanOrEqualTo(0.8);
            assertThat(r.support().words()).isEqualTo("evidence supports");
        });
        assertThat(readiness("middling").get(2).assurance()).isLessThan(0.8);
        assertThat(readiness("middling").get(2).support().words()).isEqualTo("does not yet support");
        assertThat(readiness("fewScorers").get(2).assurance()).isGreaterThanOrEqualTo(0.8);
        assertThat(readiness("fewScorers").get(2).support().words()).isEqualTo("insufficient evidence");
        assertThat(readiness("fewCases")).allMatch(r -> r.support() == Support.INSUFFICIENT);
        assertThat(readiness("fewCases")).noneMatch(r -> r.forecast().shown());
    }

    @Test
    void withoutCriticalStepsNothingIsSupported() {
        record("able", 4, 30, ReadinessTests::able);
        assertThat(CompetencyModel.smooth(fit(), table(), "able", ProcedureStandard.usual(List.of()))
                        .readiness())
                .allMatch(r -> r.support() == Support.INSUFFICIENT);
    }

    @Test
    void aHigherLevelOrChanceIsNeverEasier() {
        record("middling", 4, 30, ReadinessTests::middling);
        List<Readiness> r = readiness("middling");
        assertThat(r.get(1).assurance()).isLessThanOrEqualTo(r.get(0).assurance());
        assertThat(r.get(2).chance()).isLessThan(r.get(1).chance());
        for (Readiness one : r) {
            assertThat(one.chance())
                    .isLessThan(one.steps().stream()
                            .mapToDouble(Readiness.StepChance::chance)
                            .min()
                            .orElseThrow());
            Forecast f = one.forecast();
            assertThat(f.within10()).isBetween(0.0, f.within20());
            assertThat(f.within60()).isBetween(f.within20(), 0.8);
        }
    }

    /** Against plain Monte Carlo from the same law with an ordinary generator, shared effect and walk drawn too. */
    @Test
    void chanceAssuranceAndForecastEqualMonteCarlo() {
        record("middling", 4, 22, ReadinessTests::middling);
        PopulationFit fit = fit();
        SmoothedTrainee smoothed = SmoothedTrainee.of(fit, table(), "middling");
        int[] critical = {1, 4, 9};
        NextCase law = smoothed.next(critical, new double[3]);
        LevelStandard standard = new LevelStandard("X", 4, 0.3);
        ReadinessJudge judge = new ReadinessJudge(smoothed.point, law, critical, CRITICAL, 1, WholeCase.DRAWS);
        Evidence enough = new Evidence(0.9, Evidence.Strength.REPORTABLE, 22, 4, 0.3, List.of());
        Readiness readiness = judge.judge(standard, 0.8, enough);
        MonteCarlo plain = new MonteCarlo(smoothed.point, law, critical, standard);
        plain.run(4000);
        assertThat(readiness.chance()).isCloseTo(plain.mean, within(0.012));
        assertThat(readiness.assurance()).isCloseTo(plain.assurance, within(0.035));
        assertThat((double) readiness.forecast().median()).isCloseTo(plain.medianWait, within(4.0));
        assertThat(readiness.forecast().within20()).isCloseTo(Math.min(0.8, plain.within20), within(0.05));
    }

    private static final class MonteCarlo {
        private final ModelPoint point;
        private final NextCase law;
        private final int[] critical;
        private final LevelStandard standard;
        private final Random random = new Random(11);
        double mean;
        double assurance;
        double medianWait;
        double within20;

        MonteCarlo(ModelPoint point, NextCase law, int[] critical, LevelStandard standard) {
            this.point = point;
            this.law = law;
            this.critical = critical;
            this.standard = standard;
        }

        void run(int draws) {
            double[] factor = law.covariance().clone();
            Dense.cholesky(factor, law.size());
            List<Integer> waits = new ArrayList<>();
            for (int i = 0; i < draws; i++) {
                double[] x = law.mean().clone();
                for (int k = 0; k < x.length; k++) {
                    Dense.add(x, 0, factor, k * x.length, k, x.length, random.nextGaussian());
                }
                double now = chance(x);
                mean += now / draws;
                assurance += now >= standard.chance() ? 1.0 / draws : 0;
                waits.add(wait(x));
            }
            waits.sort(null);
            medianWait = waits.get(draws / 2);
            within20 = waits.stream().filter(w -> w <= 20).count() / (double) draws;
        }

        private int wait(double[] start) {
            double[] x = start.clone();
            for (int k = 0; k <= Forecast.HORIZON; k++) {
                if (chance(x) >= standard.chance()) {
                    return k;
                }
                double rise = point.growth(law.experience() + k + 1) - point.growth(law.experience() + k);
                x[0] += (point.gain + x[1]) * rise + Math.sqrt(point.walk) * random.nextGaussian();
            }
            return Forecast.BEYOND;
        }

        private double chance(double[] x) {
            double sum = 0;
            int n = 41;
            double total = 0;
            for (int q = 0; q < n; q++) {
                double z = -5 + 10.0 * q / (n - 1);
                double weight = Math.exp(-z * z / 2);
                double product = weight;
                for (int c = 0; c < critical.length; c++) {
                    double l = x[0] + x[2 + c] - point.beta[critical[c]] + z * Math.sqrt(point.assessmentVarianceOfAll);
                    product /= 1 + Math.exp(point.tau[standard.level() - 2] - l);
                }
                sum += product;
                total += weight;
            }
            return sum / total;
        }
    }
}
