package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Histories in which one reason for a difference was planted, and the laws that hold for any. */
class StepGapTests {

    private static final List<String> STEPS = List.of("S1", "S2", "S3", "S4", "S5", "S6");
    private static final List<Double> PLAIN = List.of(0.0, 0.0, 0.0);
    private static final List<Double> HARD = List.of(1.0, 1.0, 1.0);
    private static final ProcedureStandard STANDARD = ProcedureStandard.usual(List.of("S1", "S2"));
    private static final CompetencyModel MODEL = new CompetencyModel(ModelSettings.standard(5));

    private final List<ObservedScore> scores = new ArrayList<>();
    private final Random random = new Random(20260501L);

    /** Six others, seen by four supervisors each in plain cases, around level 4. */
    @BeforeEach
    void aProgrammeOfOthers() {
        for (int t = 0; t < 6; t++) {
            for (int i = 0; i < 16; i++) {
                record("other" + t, "v" + i % 4, i, PLAIN, 3 + random.nextInt(3));
            }
        }
    }

    @Test
    void thePartsAddUpAndEndAtTheCurve() {
        for (int i = 0; i < 14; i++) {
            record("t", "v" + i % 3, i, i % 4 == 0 ? HARD : PLAIN, 1 + random.nextInt(5));
        }
        PopulationFit fit = MODEL.fit(table());
        List<StepCurve> curves =
                CompetencyModel.smooth(fit, table(), "t", STANDARD).steps();

        List<StepGap> gaps = CompetencyModel.gaps(fit, table(), "t", STANDARD);

        assertThat(gaps).extracting(StepGap::step).containsExactlyElementsOf(STEPS);
        for (int s = 0; s < STEPS.size(); s++) {
            StepGap gap = gaps.get(s);
            List<StepCurve.Chance> points = curves.get(s).points();
            assertThat(gap.modelled()).isCloseTo(points.get(points.size() - 1).chance(), within(1e-12));
            assertThat(gap.parts().values().stream()
                            .mapToDouble(Double::doubleValue)
                            .sum())
                    .isCloseTo(gap.size(), within(1e-12));
            assertThat(gap.raw()).isEqualTo(share("t", gap.step()));
            assertThat(gap.scores()).isEqualTo(14);
        }
    }

    @Test
    void hardCasesAreNamed() {
        for (int i = 0; i < 16; i++) {
            record("t", "v" + i % 4, i, HARD, 3 + i % 2);
        }

        assertThat(gaps()).allSatisfy(gap -> {
            assertThat(gap.size()).isGreaterThan(.15);
            assertThat(gap.largest()).isEqualTo(StepGap.Part.CASES);
        });
    }

    @Test
    void aSparingSupervisorIsNamedAndAGenerousOneTheOtherWay() {
        for (int t = 0; t < 6; t++) {
            for (int i = 16; i < 28; i++) {
                record("other" + t, i % 2 == 0 ? "sparing" : "generous", i, PLAIN, i % 2 == 0 ? 3 : 5);
            }
        }
        for (int i = 0; i < 16; i++) {
            record("t", "sparing", i, PLAIN, 3);
            record("u", "generous", i, PLAIN, 5);
        }

        assertThat(gaps()).allSatisfy(gap -> {
            assertThat(gap.size()).isPositive();
            assertThat(gap.largest()).isEqualTo(StepGap.Part.SCORERS);
        });
        assertThat(gaps("u")).allSatisfy(gap -> {
            assertThat(gap.size()).isNegative();
            assertThat(gap.largest()).isEqualTo(StepGap.Part.SCORERS);
        });
    }

    @Test
    void aRiseIsNamed() {
        for (int i = 0; i < 40; i++) {
            record("t", "v" + i % 4, i, PLAIN, i < 25 ? 2 : 5);
        }

        assertThat(gaps()).allSatisfy(gap -> {
            assertThat(gap.size()).isGreaterThan(.15);
            assertThat(gap.largest()).isEqualTo(StepGap.Part.TREND);
        });
    }

    @Test
    void fewScoresOfAStepAreNamed() {
        for (int i = 0; i < 16; i++) {
            record("t", "v" + i % 4, i, PLAIN, 4);
        }
        scores.removeIf(score -> score.trainee().equals("t") && score.step().equals("S3"));
        for (int i = 0; i < 3; i++) {
            scores.add(new ObservedScore("t" + i, "t", "v" + i % 4, context(i, PLAIN), "S3", 3));
        }

        StepGap gap = gaps().stream()
                .filter(one -> one.step().equals("S3"))
                .findFirst()
                .orElseThrow();
        assertThat(gap.raw()).isZero();
        assertThat(gap.scores()).isEqualTo(3);
        assertThat(gap.size()).isGreaterThan(.15);
        assertThat(gap.largest()).isEqualTo(StepGap.Part.PULL);
    }

    @Test
    void aTraineeWithoutScoresHasNone() {
        assertThat(gaps("nobody")).isEmpty();
    }

    private void record(String trainee, String supervisor, int i, List<Double> complexity, int level) {
        for (String step : STEPS) {
            int near = Math.max(1, Math.min(5, level + (random.nextInt(8) == 0 ? 1 : 0)));
            scores.add(new ObservedScore(trainee + i, trainee, supervisor, context(i, complexity), step, near));
        }
    }

    private static CaseContext context(int i, List<Double> complexity) {
        return new CaseContext("c" + i, i, i, 0, complexity);
    }

    private ScoreTable table() {
        return ScoreTable.of(5, STEPS, scores);
    }

    private double share(String trainee, String step) {
        List<ObservedScore> of = scores.stream()
                .filter(score -> score.trainee().equals(trainee) && score.step().equals(step))
                .toList();
        return (double) of.stream().filter(score -> score.lowest() >= 4).count() / of.size();
    }

    private List<StepGap> gaps() {
        return gaps("t");
    }

    private List<StepGap> gaps(String trainee) {
        return CompetencyModel.gaps(MODEL.fit(table()), table(), trainee, STANDARD);
    }
}
