package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Whatever the scores, results are finite, bounded and come with a sentence; {@code DegenerateScoresSoak} tries more. */
class DegenerateScoresTests {

    private static final List<String> STEPS =
            IntStream.range(0, 6).mapToObj(i -> "S" + i).toList();
    private static final ProcedureStandard STANDARD = ProcedureStandard.usual(List.of("S1", "S4"));
    private static final CompetencyModel MODEL = new CompetencyModel(ModelSettings.standard(5));

    @Test
    void randomDegenerateProgrammesStayBounded() {
        assertThat(curvesHeld(150)).isGreaterThan(300);
    }

    /** Holds so many programmes to their bounds and returns how many curves they had. */
    static int curvesHeld(int programmes) {
        int curves = 0;
        for (int seed = 0; seed < programmes; seed++) {
            Random random = new Random(seed);
            ScoreTable table = ScoreTable.of(5, STEPS, degenerate(random));
            Estimation estimation = Estimation.values()[random.nextInt(3)];
            PopulationFit fit =
                    seed % 2 == 0 ? MODEL.fit(table) : MODEL.fit(table, Psi.shipped(5, STEPS.size(), 3), estimation);
            assertThat(fit.logLikelihood()).as("seed %d", seed).isFinite();
            bounded(fit, seed);
            List<String> people = new ArrayList<>(table.trainees());
            people.add("nobody");
            for (String trainee : people) {
                CompetencyCurve curve = CompetencyModel.smooth(fit, table, trainee, STANDARD);
                bounded(curve, seed);
                assertThat(TraineeSignals.of(table, curve, RunningPath.of(fit, table, trainee)))
                        .allSatisfy(flag -> assertThat(flag.value()).isFinite());
                curves++;
            }
            assertThat(ScorerSignals.of(fit, table))
                    .allSatisfy(flag -> assertThat(flag.value()).isFinite());
        }
        return curves;
    }

    /** Few people, odd sizes, one-level scorers, groups that share nobody, long gaps, single steps, wide intervals. */
    private static List<ObservedScore> degenerate(Random random) {
        int trainees = random.nextInt(4);
        int supervisors = 1 + random.nextInt(4);
        int kind = random.nextInt(6);
        boolean apart = random.nextBoolean();
        List<ObservedScore> scores = new ArrayList<>();
        for (int t = 0; t < trainees; t++) {
            int cases = 1 + random.nextInt(random.nextInt(4) == 0 ? 60 : 6);
            double experience = random.nextInt(3) == 0 ? random.nextInt(500) : 0;
            for (int i = 0; i < cases; i++) {
                experience += random.nextInt(4);
                CaseContext context = new CaseContext(
                        "c" + i,
                        i,
                        experience,
                        random.nextInt(5) == 0 ? 8 : 0,
                        List.of(random.nextInt(2) * 1.0, random.nextDouble(), 0.0));
                int v = apart ? t % supervisors : random.nextInt(supervisors);
                for (int s = 0; s < STEPS.size(); s++) {
                    if (kind != 5 || s == 0) {
                        int y = level(kind, t, random);
                        int high = random.nextInt(10) == 0 ? 5 : y;
                        scores.add(
                                new ObservedScore("a" + t + "_" + i, "t" + t, "v" + v, context, STEPS.get(s), y, high));
                    }
                }
            }
        }
        return scores;
    }

    private static int level(int kind, int trainee, Random random) {
        return switch (kind) {
            case 0 -> 5;
            case 1 -> 1;
            case 2 -> trainee % 2 == 0 ? 5 : 1;
            case 3 -> random.nextBoolean() ? 5 : 1;
            default -> 1 + random.nextInt(5);
        };
    }

    private static void bounded(PopulationFit fit, int seed) {
        assertThat(fit.severities()).allSatisfy(s -> {
            assertThat(Math.abs(s.mean())).as("seed %d", seed).isLessThan(30);
            assertThat(s.sd()).as("seed %d", seed).isBetween(0.0, 10.0);
        });
        assertThat(fit.psi().difficulty())
                .allSatisfy(b -> assertThat(Math.abs(b)).as("seed %d", seed).isLessThan(30));
    }

    private static void bounded(CompetencyCurve curve, int seed) {
        String as = "seed " + seed + " " + curve.trainee();
        for (CurvePoint p : curve.points()) {
            assertThat(Math.abs(p.level())).as(as).isLessThan(40);
            assertThat(p.sd()).as(as).isBetween(1e-3, 10.0);
            assertThat(p.low()).as(as).isLessThan(p.high());
        }
        for (StepCurve step : curve.steps()) {
            for (StepCurve.Chance c : step.points()) {
                assertThat(c.low()).as(as).isBetween(0.0, c.chance());
                assertThat(c.high()).as(as).isBetween(c.chance(), 1.0);
            }
        }
        for (Readiness r : curve.readiness()) {
            assertThat(r.chance()).as(as).isBetween(0.0, 1.0);
            assertThat(r.assurance()).as(as).isBetween(0.0, 1.0);
            assertThat(r.forecast().low()).as(as).isBetween(0, r.forecast().median());
            assertThat(r.forecast().high()).as(as).isBetween(r.forecast().median(), Forecast.BEYOND);
        }
        assertThat(curve.evidence().statement()).as(as).isNotBlank();
        assertThat(curve.evidence().index()).as(as).isBetween(0.0, 1.0);
    }
}
