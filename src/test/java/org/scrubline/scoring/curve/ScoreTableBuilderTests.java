package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Where every row ends up, and which rows contradict each other. */
class ScoreTableBuilderTests {

    private static CaseContext context(String id, long order, double experience, double gap, Double... x) {
        return new CaseContext(id, order, experience, gap, List.of(x));
    }

    private static ObservedScore score(String assessment, String trainee, String v, CaseContext c, String step, int y) {
        return new ObservedScore(assessment, trainee, v, c, step, y);
    }

    private static void refused(String sentence, ObservedScore... scores) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ScoreTable.of(5, List.of(), List.of(scores)))
                .withMessage(sentence);
    }

    @Test
    void rowsAreSortedByTraineeTimeAssessmentAndStep() {
        CaseContext early = context("z", 1, 3, 0, 0.5);
        CaseContext late = context("a", 2, 4, 1.5, 0.25);
        List<ObservedScore> scores = new ArrayList<>(List.of(
                score("10", "t2", "v2", early, "S2", 1),
                score("9", "t1", "v1", late, "S1", 2),
                score("9", "t1", "v1", late, "S0", 3),
                score("8", "t1", "v2", early, "S1", 4),
                score("7", "t1", "v1", early, "S1", 5)));
        for (int seed = 0; seed < 10; seed++) {
            Collections.shuffle(scores, new Random(seed));
            ScoreTable table = ScoreTable.of(5, List.of(), scores);
            assertThat(table.trainees()).containsExactly("t1", "t2");
            assertThat(table.supervisors()).containsExactly("v1", "v2");
            assertThat(table.steps()).containsExactly("S0", "S1", "S2");
            assertThat(table.caseStart).containsExactly(0, 2, 3);
            assertThat(table.caseIds).containsExactly("z", "a", "z");
            assertThat(table.caseOrder).containsExactly(1, 2, 1);
            assertThat(table.experience).containsExactly(3, 4, 3);
            assertThat(table.gapExcess).containsExactly(0, 1.5, 0);
            assertThat(table.assessmentStart).containsExactly(0, 2, 3, 4);
            assertThat(table.assessmentIds).containsExactly("7", "8", "9", "10");
            assertThat(table.supervisor).containsExactly(0, 1, 0, 1);
            assertThat(table.complexity).containsExactly(0.5, 0.5, 0.25, 0.5);
            assertThat(table.scoreStart).containsExactly(0, 1, 2, 4, 5);
            assertThat(table.step).containsExactly((short) 1, (short) 1, (short) 0, (short) 1, (short) 2);
            assertThat(table.span).containsExactly((byte) 0x55, (byte) 0x44, (byte) 0x33, (byte) 0x22, (byte) 0x11);
            assertThat(table.assessments()).isEqualTo(4);
            assertThat(table.scores()).isEqualTo(5);
            assertThat(table.covariates()).isEqualTo(1);
            assertThat(table.levels()).isEqualTo(5);
        }
    }

    @Test
    void aStepListedTwiceStaysAtItsFirstPlace() {
        CaseContext only = context("c", 1, 0, 0);
        ScoreTable table = ScoreTable.of(
                5,
                List.of("S1", "S0", "S1"),
                List.of(score("a", "t", "v", only, "S0", 2), score("a", "t", "v", only, "S1", 3)));
        assertThat(table.steps()).containsExactly("S1", "S0");
        assertThat(table.step).containsExactly((short) 0, (short) 1);
        assertThat(table.span).containsExactly((byte) 0x33, (byte) 0x22);
    }

    @Test
    void casesAtOneTimeAreOrderedByTheirId() {
        ScoreTable table = ScoreTable.of(
                5,
                List.of(),
                List.of(
                        score("a", "t", "v", context("10", 1, 1, 0), "S", 1),
                        score("b", "t", "v", context("9", 1, 1, 0), "S", 2)));
        assertThat(table.caseIds).containsExactly("9", "10");
    }

    /** The gap before a case nobody saw waits for the next case of the same trainee and for nobody else's. */
    @Test
    void aWaitingGapStaysWithItsTrainee() {
        ScoreTable table = ScoreTable.of(
                5,
                List.of("S"),
                List.of(
                        score("a", "t1", "v", context("c1", 1, 1, 0), "S", 3),
                        new ObservedScore("b", "t1", "v", context("c2", 2, 2, 4), "S", 1, 5),
                        score("c", "t2", "v", context("c1", 1, 1, 2), "S", 3)));
        assertThat(table.caseIds).containsExactly("c1", "c1");
        assertThat(table.gapExcess).containsExactly(0, 2);
    }

    @Test
    void manyRowsAreKeptInFull() {
        ScoreTableBuilder builder = new ScoreTableBuilder(5, List.of(), List.of());
        for (int i = 0; i < 5000; i++) {
            builder.add(score(
                    "a" + i / 4,
                    "t" + i / 100,
                    "v" + i / 4 % 3,
                    context("c" + i / 4, i / 4, 1, 0),
                    "S" + i % 4,
                    1 + i % 5));
        }
        ScoreTable table = builder.build();
        assertThat(table.scores()).isEqualTo(5000);
        assertThat(table.assessments()).isEqualTo(1250);
        long[] levels = new long[6];
        for (byte span : table.span) {
            levels[ScoreTable.lowest(span)]++;
            assertThat(ScoreTable.highest(span)).isEqualTo(ScoreTable.lowest(span));
        }
        assertThat(levels).containsExactly(0, 1000, 1000, 1000, 1000, 1000);
    }

    @Test
    void rowsOfOneAssessmentMustAgree() {
        CaseContext c = context("c", 1, 2, 0);
        String two = "assessment a names two trainees or two supervisors; give each its own assessment";
        refused(two, score("a", "t", "v", c, "S", 1), score("a", "u", "v", c, "R", 1));
        refused(two, score("a", "t", "v", c, "S", 1), score("a", "t", "w", c, "R", 1));
        refused(
                "the rows of assessment a describe different cases",
                score("a", "t", "v", c, "S", 1),
                score("a", "t", "v", context("c", 1, 3, 0), "R", 1));
        refused("assessment a scores step S twice", score("a", "t", "v", c, "S", 1), score("a", "t", "v", c, "S", 2));
        refused(
                "assessment b has 1 complexity values, others have 0",
                score("a", "t", "v", c, "S", 1),
                score("b", "t", "v", context("d", 2, 3, 0, 1.0), "S", 1));
        assertThatCode(() -> ScoreTable.of(
                        5,
                        List.of(),
                        List.of(
                                score("a", "t", "v", c, "S", 1),
                                score("b", "t", "w", c, "S", 1),
                                score("a", "t", "v", c, "R", 1))))
                .doesNotThrowAnyException();
    }

    @Test
    void scorersOfOneCaseMustAgreeOnIt() {
        String sentence = "assessments a and b share a case but give it different experience, gap or time";
        ObservedScore first = score("a", "t", "v", context("c", 1, 2, 0), "S", 1);
        refused(sentence, first, score("b", "t", "w", context("c", 2, 2, 0), "S", 1));
        refused(sentence, first, score("b", "t", "w", context("c", 1, 3, 0), "S", 1));
        refused(sentence, first, score("b", "t", "w", context("c", 1, 2, 1), "S", 1));
        assertThatCode(() -> ScoreTable.of(
                        5, List.of(), List.of(first, score("b", "u", "w", context("c", 2, 3, 1), "S", 1))))
                .doesNotThrowAnyException();
    }

    @Test
    void theScaleHasTwoToFifteenLevels() {
        for (int levels : new int[] {1, 16}) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> new ScoreTableBuilder(levels, List.of(), List.of()))
                    .withMessage("the number of levels must be 2..15, but is " + levels);
        }
        for (int levels : new int[] {2, 15}) {
            ObservedScore top = score("a", "t", "v", context("c", 1, 2, 0), "S", levels);
            byte span = ScoreTable.of(levels, List.of(), List.of(top)).span[0];
            assertThat(ScoreTable.lowest(span)).isEqualTo(levels);
            assertThat(ScoreTable.highest(span)).isEqualTo(levels);
        }
    }

    @Test
    void whatIsListedIsKnownWithoutAScore() {
        ScoreTableBuilder builder = new ScoreTableBuilder(5, List.of(), List.of("w"));
        builder.add(score("a", "t", "v", context("c", 1, 2, 0), "S2", 1));
        builder.listSteps(List.of("S1", "S2"));
        builder.listSupervisors(List.of("u"));
        assertThat(builder.supervisorsSeen()).containsExactly("v");
        assertThat(builder.stepsInOrderOfAppearance()).containsExactly("S2", "S1");
        ScoreTable table = builder.build();
        assertThat(table.steps()).containsExactly("S1", "S2");
        assertThat(table.supervisors()).containsExactly("u", "v", "w");
        assertThat(table.supervisor).containsExactly(1);
        assertThat(table.step).containsExactly((short) 1);
    }

    @Test
    void givenStepsKeepTheirOrder() {
        ScoreTable table = ScoreTable.of(
                5,
                List.of("Z", "A"),
                List.of(
                        score("a", "t", "v", context("c", 1, 2, 0), "A", 1),
                        score("a", "t", "v", context("c", 1, 2, 0), "Z", 2)));
        assertThat(table.steps()).containsExactly("Z", "A");
        assertThat(table.span).containsExactly((byte) 0x22, (byte) 0x11);
    }

    @Test
    void markedAssessmentsMoveToTheExtraSupervisor() {
        ScoreTable table = ScoreTable.of(
                5,
                List.of(),
                List.of(
                        score("a", "t", "v", context("c", 1, 2, 0), "S", 1),
                        score("b", "t", "v", context("d", 2, 3, 0), "S", 2)));
        ScoreTable moved = table.withExtraSupervisor("v (later)", new boolean[] {false, true});
        assertThat(moved.supervisors()).containsExactly("v", "v (later)");
        assertThat(moved.supervisor).containsExactly(0, 1);
        assertThat(table.supervisor).containsExactly(0, 0);
        assertThat(moved.caseIds).isEqualTo(table.caseIds);
    }

    @Test
    void idsAreNumbersUpToEighteenDigits() {
        assertThat(IdOrder.isNumber("123456789012345678")).isTrue();
        assertThat(IdOrder.isNumber("1234567890123456789")).isFalse();
        assertThat(IdOrder.isNumber("")).isFalse();
        assertThat(IdOrder.isNumber("0")).isTrue();
        assertThat(IdOrder.isNumber("9")).isTrue();
        assertThat(IdOrder.isNumber("-1")).isFalse();
        assertThat(IdOrder.isNumber("1:")).isFalse();
        assertThat(IdOrder.sorted(List.of("07", "7", "6"))).containsExactly("6", "07", "7");
    }

    @Test
    void aProgrammesOwnValuesNeedThreeHundredAssessmentsSixTraineesAndFourSupervisors() {
        assertThat(allowed(300, 6, 4)).isEqualTo(Estimation.ALL);
        assertThat(allowed(299, 6, 4)).isEqualTo(Estimation.DIFFICULTY);
        assertThat(allowed(300, 5, 4)).isEqualTo(Estimation.DIFFICULTY);
        assertThat(allowed(300, 6, 3)).isEqualTo(Estimation.DIFFICULTY);
        assertThat(Estimation.DIFFICULTY.frees("beta")).isTrue();
        assertThat(Estimation.DIFFICULTY.frees("rho")).isTrue();
        assertThat(Estimation.DIFFICULTY.frees("hal")).isTrue();
        assertThat(Estimation.DIFFICULTY.frees("tau")).isFalse();
        assertThat(Estimation.GIVEN.frees("beta")).isFalse();
        assertThat(Estimation.ALL.frees("tau")).isTrue();
    }

    private static Estimation allowed(int assessments, int trainees, int supervisors) {
        ScoreTableBuilder builder = new ScoreTableBuilder(5, List.of(), List.of("idle"));
        for (int j = 0; j < assessments; j++) {
            builder.add(score("a" + j, "t" + j % trainees, "v" + j % supervisors, context("c" + j, j, j, 0), "S", 3));
        }
        return Estimation.allowedFor(builder.build());
    }
}
