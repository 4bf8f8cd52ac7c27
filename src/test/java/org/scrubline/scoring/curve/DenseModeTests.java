package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.hipparchus.linear.RealVector;
import org.junit.jupiter.api.Test;

/**
 * Two trainees, three supervisors, one of them shared, complexity, a gap, a case scored twice, intervals and takeovers:
 * everything a curve says against the same model solved as one dense system.
 */
class DenseModeTests {

    private static final List<String> STEPS = List.of("A", "B", "C", "D");
    private static final List<Double> GAMMA = List.of(0.6, -0.3);
    private static final Psi PSI = new Psi(
            List.of(-2.0, -0.4, 0.9, 3.0),
            List.of(0.5, -0.7, 0.3, -0.1),
            GAMMA,
            3.2,
            0.3,
            0.6,
            0.8,
            0.4,
            0.5,
            0.7,
            0.2,
            0.05,
            0.1,
            List.of(0.2, -0.15, 0.05),
            List.of(-0.2, 0.3, 0.1));

    private static final double[] EXPERIENCE = {2, 3, 5, 6, 6.5};
    private static final double[] GAP = {0.5, 0, 2, 0, 0};

    private final ScoreTable table = table();
    private final PopulationFit fit = new CompetencyModel(ModelSettings.standard(5)).fit(table, PSI, Estimation.GIVEN);
    private final DenseMode dense = new DenseMode(table, PSI);

    private static ScoreTable table() {
        Random random = new Random(42);
        List<ObservedScore> scores = new ArrayList<>();
        for (String trainee : List.of("t0", "t1")) {
            for (int i = 0; i < 5; i++) {
                List<Double> x = List.of((double) random.nextInt(2), random.nextDouble());
                CaseContext context = new CaseContext("c" + i, 10L * i, EXPERIENCE[i], GAP[i], x);
                int other = trainee.equals("t0") ? 0 : 2;
                assess(scores, random, trainee, i % 2 == 0 ? "v" + other : "v1", context);
                if (i == 3) {
                    assess(scores, random, trainee, "v" + other, context);
                }
            }
        }
        return ScoreTable.of(5, STEPS, scores);
    }

    private static void assess(
            List<ObservedScore> scores, Random random, String trainee, String supervisor, CaseContext context) {
        for (String step : STEPS) {
            int low = 1 + random.nextInt(5);
            int high = random.nextInt(4) == 0 ? Math.min(5, low + random.nextInt(3)) : low;
            if (random.nextInt(5) > 0) {
                scores.add(new ObservedScore(
                        trainee + context.caseId() + supervisor, trainee, supervisor, context, step, low, high));
            }
        }
    }

    private CompetencyCurve curve(int t) {
        ProcedureStandard standard = ProcedureStandard.usual(List.of("B", "D"));
        return CompetencyModel.smooth(fit, table, "t" + t, standard);
    }

    private RealVector level(int t, int i) {
        RealVector level = dense.trainee(t, table.caseStart[t] + i);
        for (int s = 0; s < STEPS.size(); s++) {
            level.setEntry(dense.at("step" + t + "," + s), 1.0 / STEPS.size());
        }
        return level;
    }

    private double known(int t, int i) {
        int at = table.caseStart[t] + i;
        return PSI.gain() * DenseMode.growth(table.experience[at]) - PSI.gapLoss() * dense.away(t, at);
    }

    @Test
    void theLogLikelihoodIsThatOfTheDenseSystem() {
        assertThat(fit.logLikelihood()).isCloseTo(dense.logLikelihood(), within(1e-7));
    }

    @Test
    void severitiesAndTheirSpreadAreThoseOfTheDenseSystem() {
        for (int v = 0; v < 3; v++) {
            RealVector severity = dense.one("severity" + v);
            assertThat(fit.severities().get(v).mean()).isCloseTo(dense.mean(severity), within(1e-7));
            assertThat(fit.severities().get(v).sd()).isCloseTo(dense.sd(severity), within(1e-8));
        }
        assertThat(fit.panelSeverity()).isCloseTo(dense.mean(dense.panel()), within(1e-7));
    }

    @Test
    void levelsAndBandsAreThoseOfTheDenseSystem() {
        for (int t = 0; t < 2; t++) {
            CompetencyCurve curve = curve(t);
            assertThat(curve.startLevel()).isCloseTo(dense.mean(dense.one("level" + t)), within(1e-7));
            assertThat(curve.gain()).isCloseTo(dense.mean(dense.one("gain" + t)), within(1e-7));
            assertThat(curve.points()).hasSize(5);
            for (int i = 0; i < 5; i++) {
                CurvePoint p = curve.points().get(i);
                RealVector plain = level(t, i);
                RealVector seen = plain.subtract(dense.panel());
                double expected = dense.mean(plain) + known(t, i) - PSI.threshold(4);
                assertThat(p.plainLevel()).isCloseTo(expected, within(1e-7));
                assertThat(p.plainSd()).isCloseTo(dense.sd(plain), within(1e-8));
                assertThat(p.level()).isCloseTo(expected - dense.mean(dense.panel()), within(1e-7));
                assertThat(p.sd()).isCloseTo(dense.sd(seen), within(1e-8));
                assertThat(p.low()).isCloseTo(p.level() - 1.6448536269514722 * 1.12 * p.sd(), within(1e-12));
                assertThat(p.high()).isCloseTo(p.level() + 1.6448536269514722 * 1.12 * p.sd(), within(1e-12));
                assertThat(p.caseId()).isEqualTo("c" + i);
                assertThat(p.order()).isEqualTo(10L * i);
                assertThat(p.experience()).isEqualTo(EXPERIENCE[i]);
                assertThat(p.gapExcess()).isEqualTo(GAP[i]);
            }
        }
    }

    /** The typical case has the mean complexity of all assessments; the shared effect is summed finely. */
    @Test
    void chancesOfStepsAndTheirBandsAreThoseOfTheDenseSystem() {
        double typical = 0;
        for (int x = 0; x < 2; x++) {
            double sum = 0;
            for (int j = 0; j < table.assessments(); j++) {
                sum += table.complexity[2 * j + x];
            }
            assertThat(fit.caseMix().get(x)).isCloseTo(sum / table.assessments(), within(1e-12));
            typical += GAMMA.get(x) * sum / table.assessments();
        }
        for (int t = 0; t < 2; t++) {
            CompetencyCurve curve = curve(t);
            for (int s = 0; s < STEPS.size(); s++) {
                StepCurve step = curve.steps().get(s);
                RealVector own = dense.one("step" + t + "," + s);
                assertThat(step.step()).isEqualTo(STEPS.get(s));
                assertThat(step.effect()).isCloseTo(dense.mean(own), within(1e-7));
                assertThat(step.effectSd()).isCloseTo(dense.sd(own), within(1e-8));
                assertThat(step.seen()).isEqualTo(seen(t, s));
                for (int i = 0; i < 5; i++) {
                    RealVector location =
                            dense.trainee(t, table.caseStart[t] + i).add(own).subtract(dense.panel());
                    double above = dense.mean(location)
                            + known(t, i)
                            - typical
                            - PSI.difficulty().get(s)
                            - PSI.threshold(4);
                    double half = 1.6448536269514722 * 1.12 * dense.sd(location);
                    StepCurve.Chance chance = step.points().get(i);
                    assertThat(chance.chance()).isCloseTo(chance(above), within(1e-5));
                    assertThat(chance.low()).isCloseTo(chance(above - half), within(1e-5));
                    assertThat(chance.high()).isCloseTo(chance(above + half), within(1e-5));
                }
            }
        }
    }

    private long seen(int t, int s) {
        int first = table.scoreStart[table.assessmentStart[table.caseStart[t]]];
        int end = table.scoreStart[table.assessmentStart[table.caseStart[t + 1]]];
        return IntStream.range(first, end).filter(k -> table.step[k] == s).count();
    }

    private static double chance(double above) {
        double sum = 0;
        double total = 0;
        for (int q = 0; q <= 400; q++) {
            double z = -8 + q / 25.0;
            double weight = Math.exp(-z * z / 2);
            sum += weight * DenseMode.sigmoid(above + PSI.assessmentSd() * z);
            total += weight;
        }
        return sum / total;
    }

    @Test
    void theLawOfTheNextCaseIsThatOfTheDenseSystem() {
        double[] mix = {0.4, 0.7};
        for (int t = 0; t < 2; t++) {
            NextCase law = SmoothedTrainee.of(fit, table, "t" + t).next(new int[] {3, 1}, mix);
            double growth = DenseMode.growth(EXPERIENCE[4] + 1);
            RealVector common = dense.trainee(t, table.caseStart[t] + 4).subtract(dense.panel());
            common.setEntry(dense.at("gain" + t), growth);
            List<RealVector> parts =
                    List.of(common, dense.one("gain" + t), dense.one("step" + t + ",3"), dense.one("step" + t + ",1"));
            double known = PSI.gain() * growth
                    - PSI.gapLoss() * dense.away(t, table.caseStart[t] + 4)
                    - 0.4 * GAMMA.get(0)
                    - 0.7 * GAMMA.get(1);
            assertThat(law.experience()).isEqualTo(EXPERIENCE[4] + 1);
            assertThat(law.critical()).isEqualTo(2);
            for (int r = 0; r < 4; r++) {
                double mean = dense.mean(parts.get(r)) + (r == 0 ? known : 0);
                assertThat(law.mean()[r]).isCloseTo(mean, within(1e-7));
                for (int c = 0; c < 4; c++) {
                    double wobble = r == 0 && c == 0 ? PSI.walk() : 0;
                    assertThat(law.covariance()[4 * r + c])
                            .as("entry %d, %d", r, c)
                            .isCloseTo(dense.covariance(parts.get(r), parts.get(c)) + wobble, within(1e-8));
                }
            }
        }
    }

    /** What nobody's scores would leave at the last case: start, gain, five rises of the walk, steps and the panel. */
    @Test
    void theEvidenceIndexComparesTheBandWithThePopulations() {
        for (int t = 0; t < 2; t++) {
            double growth = DenseMode.growth(EXPERIENCE[4]);
            double prior = 0.36 + growth * growth * 0.64 + 0.16 / 4 + 0.49 / 3;
            double rises = 1 + 1 + 2 + 1 + 0.5;
            prior += 0.05 * rises + 0.1 * 2.5;
            double sd = dense.sd(level(t, 4).subtract(dense.panel()));
            assertThat(curve(t).evidence().index()).isCloseTo(1 - 1.2544 * sd * sd / prior, within(1e-7));
        }
    }

    /** A trainee nobody scored is the population: no scores of others move more than the panel's mean severity. */
    @Test
    void theDashedStartIsThePopulationsLaw() {
        CompetencyCurve curve = curve(1);
        double sd = Math.sqrt(0.36 + 0.16 / 4 + 0.05);
        assertThat(curve.prior().chance()).isCloseTo(-0.9 - dense.mean(dense.panel()), within(1e-7));
        assertThat(curve.prior().high() - curve.prior().chance())
                .isCloseTo(1.6448536269514722 * 1.12 * sd, within(1e-9));
        assertThat(curve.prior().chance() - curve.prior().low())
                .isCloseTo(1.6448536269514722 * 1.12 * sd, within(1e-9));
    }
}
