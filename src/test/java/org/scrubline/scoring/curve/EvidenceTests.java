package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The sentence of every missed minimum, and the counts at which each is named. */
class EvidenceTests {

    private static final List<String> STEPS = List.of("A", "B");
    private static final Psi PSI = Psi.shipped(5, 2, 0);
    private final List<ObservedScore> scores = new ArrayList<>();

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "NO_ASSESSMENTS | 0 | 5 | true | No assessments yet; the band is what the programme's trainees have in common.",
                "FEW_CASES | 4 | 5 | true | 4 scored cases; 5 are needed before a number is shown.",
                "FEW_SCORERS | 1 | 2 | true | 1 scorer(s); 2 are needed before a number is shown.",
                "CRITICAL_STEP_SELDOM_SEEN | 2 | 3 | true | Critical step X was seen 2 times; 3 are needed.",
                "WIDE_BAND | .314 | .5 | true | The band is still too wide: evidence index 0.31, 0.50 is needed.",
                "FEW_CASES_FOR_DECISION | 11 | 12 | false | 11 scored cases; 12 are needed to support a decision.",
                "FEW_SCORERS_FOR_DECISION | 3 | 4 | false | 3 scorers; 4 are needed to support a decision.",
                "ONE_SCORER_DOMINATES | .456 | .4 | false | One scorer gave 46 % of the assessments; at most 40 % may come from one.",
                "NOT_CONNECTED | 1 | 4 | false | These scorers share no trainee with the others; a comparison rests on the programme's average only.",
                "TOP_SCORES_ONLY | 9 | 0 | false | Scorer X gives only the highest level; the trainee's level cannot be told from the scorer's habit.",
                "BOTTOM_SCORES_ONLY | 9 | 0 | false | Scorer X gives only the lowest level; the trainee's level cannot be told from the scorer's habit."
            })
    void everyMissedMinimumSaysWhatThereIsAndWhatIsNeeded(
            Evidence.Kind kind, double have, double need, boolean hides, String sentence) {
        Evidence.Reason reason = new Evidence.Reason(kind, "X", have, need);
        assertThat(reason.sentence()).isEqualTo(sentence);
        Evidence evidence = new Evidence(0.6, Evidence.Strength.PROVISIONAL, 9, 3, 0.4, List.of(reason));
        assertThat(evidence.shown()).isEqualTo(!hides);
        assertThat(evidence.mayDecide()).isFalse();
        String start = hides ? "Too few cases or scorers to conclude. " : "";
        assertThat(evidence.statement()).isEqualTo(start + sentence);
    }

    @Test
    void whenNothingIsMissingTheStrengthIsSaid() {
        Evidence wide = new Evidence(0.6, Evidence.Strength.PROVISIONAL, 12, 4, 0.3, List.of());
        assertThat(wide.statement())
                .isEqualTo("Enough cases and scorers; provisional, because the band is still wide.");
        Evidence narrow = new Evidence(0.9, Evidence.Strength.REPORTABLE, 12, 4, 0.3, List.of());
        assertThat(narrow.statement()).isEqualTo("Enough cases and scorers.");
        assertThat(narrow.shown()).isTrue();
        assertThat(narrow.mayDecide()).isTrue();
    }

    @Test
    void severalReasonsFollowEachOther() {
        Evidence both = new Evidence(
                0.6,
                Evidence.Strength.PROVISIONAL,
                11,
                3,
                0.4,
                List.of(
                        new Evidence.Reason(Evidence.Kind.FEW_CASES_FOR_DECISION, "", 11, 12),
                        new Evidence.Reason(Evidence.Kind.FEW_SCORERS_FOR_DECISION, "", 3, 4)));
        assertThat(both.statement())
                .isEqualTo("11 scored cases; 12 are needed to support a decision."
                        + " 3 scorers; 4 are needed to support a decision.");
    }

    private void record(String trainee, int from, int to, String supervisor, int first, int second) {
        for (int i = from; i < to; i++) {
            CaseContext context = new CaseContext("c" + i, i, i, 0, List.of());
            String assessment = trainee + i + supervisor;
            scores.add(new ObservedScore(assessment, trainee, supervisor, context, "A", first));
            scores.add(new ObservedScore(assessment, trainee, supervisor, context, "B", second));
        }
    }

    private Evidence judge(double variance, ProcedureStandard standard) {
        ScoreTable table = ScoreTable.of(5, STEPS, scores);
        PopulationFit fit = new CompetencyModel(ModelSettings.standard(5)).fit(table, PSI, Estimation.GIVEN);
        int place = table.trainees().indexOf("t");
        return new EvidenceJudge(fit, table, standard, place).judge(variance, 1.2544);
    }

    private static List<Evidence.Kind> kinds(Evidence evidence) {
        return evidence.reasons().stream().map(Evidence.Reason::kind).toList();
    }

    /** Twelve cases of four scorers, three each. */
    private void enough() {
        for (int v = 0; v < 4; v++) {
            record("t", 3 * v, 3 * v + 3, "v" + v, 2 + v % 2, 4);
        }
    }

    /** The band's factor 1.12 is part of the index: 1 - 1.2544 variance / prior. */
    @ParameterizedTest
    @CsvSource({
        "0,    1,    REPORTABLE,  false",
        ".199, .801, REPORTABLE,  false",
        ".201, .799, PROVISIONAL, false",
        ".499, .501, PROVISIONAL, false",
        ".501, .499, NOT_ENOUGH,  true",
        "1,    0,    NOT_ENOUGH,  true",
        "7,    0,    NOT_ENOUGH,  true"
    })
    void theIndexIsReadAtItsTwoLimits(double variance, double index, Evidence.Strength strength, boolean wide) {
        enough();
        Evidence evidence = judge(variance, ProcedureStandard.usual(STEPS));
        assertThat(evidence.index()).isCloseTo(index, within(1e-12));
        assertThat(evidence.strength()).isEqualTo(strength);
        assertThat(kinds(evidence)).isEqualTo(wide ? List.of(Evidence.Kind.WIDE_BAND) : List.of());
    }

    /** With nothing left to know the index is 1, just what these limits ask for. */
    @Test
    void anIndexAtItsLimitIsEnough() {
        enough();
        ProcedureStandard usual = ProcedureStandard.usual(STEPS);
        ProcedureStandard.Minimums all = new ProcedureStandard.Minimums(5, 2, 3, 1, 1, 12, 4, 0.4);
        ProcedureStandard strict = new ProcedureStandard(STEPS, 4, 0.8, 0.8, usual.levels(), all, Set.of());
        Evidence evidence = judge(0, strict);
        assertThat(evidence.strength()).isEqualTo(Evidence.Strength.REPORTABLE);
        assertThat(evidence.reasons()).isEmpty();
    }

    @Test
    void twelveCasesOfFourScorersAreEnoughAndAreCounted() {
        enough();
        Evidence evidence = judge(0.1, ProcedureStandard.usual(STEPS));
        assertThat(evidence.reasons()).isEmpty();
        assertThat(evidence.cases()).isEqualTo(12);
        assertThat(evidence.scorers()).isEqualTo(4);
        assertThat(evidence.largestShare()).isEqualTo(0.25);
    }

    @Test
    void whatIsPendingCountsTowardNothing() {
        enough();
        Evidence evidence = judge(0.1, ProcedureStandard.usual(STEPS).withPending(Set.of("t0v0")));
        assertThat(evidence.reasons())
                .containsExactly(new Evidence.Reason(Evidence.Kind.FEW_CASES_FOR_DECISION, "", 11, 12));
        assertThat(evidence.largestShare()).isEqualTo(3.0 / 11);
    }

    @Test
    void aCriticalStepMustHaveBeenSeenThreeTimes() {
        enough();
        scores.removeIf(s -> s.step().equals("B") && s.context().order() >= 3);
        assertThat(judge(0.1, ProcedureStandard.usual(STEPS)).reasons()).isEmpty();
        scores.removeIf(s -> s.step().equals("B") && s.context().order() >= 2);
        assertThat(judge(0.1, ProcedureStandard.usual(STEPS)).reasons())
                .containsExactly(new Evidence.Reason(Evidence.Kind.CRITICAL_STEP_SELDOM_SEEN, "B", 2, 3));
        assertThat(judge(0.1, ProcedureStandard.usual(List.of("UNKNOWN"))).reasons())
                .containsExactly(new Evidence.Reason(Evidence.Kind.CRITICAL_STEP_SELDOM_SEEN, "UNKNOWN", 0, 3));
    }

    /** Four of ten assessments are 40 %, the most that may come from one; six of fifteen too; seven of sixteen not. */
    @Test
    void oneScorerMayGiveFourInTenAndNoMore() {
        enough();
        record("t", 12, 15, "v0", 3, 4);
        Evidence at = judge(0.1, ProcedureStandard.usual(STEPS));
        assertThat(at.largestShare()).isEqualTo(0.4);
        assertThat(at.reasons()).isEmpty();
        record("t", 15, 16, "v0", 3, 4);
        assertThat(judge(0.1, ProcedureStandard.usual(STEPS)).reasons())
                .containsExactly(new Evidence.Reason(Evidence.Kind.ONE_SCORER_DOMINATES, "", 7.0 / 16, 0.4));
    }

    /** One scorer alone is named once, as too few scorers. */
    @Test
    void aSingleScorerIsNotAlsoSaidToDominate() {
        record("t", 0, 6, "v0", 3, 4);
        Evidence evidence = judge(0.1, ProcedureStandard.usual(STEPS));
        assertThat(evidence.reasons()).containsExactly(new Evidence.Reason(Evidence.Kind.FEW_SCORERS, "", 1, 2));
        assertThat(evidence.largestShare()).isEqualTo(1);
    }

    @Test
    void fourCasesOfTwoScorersAreTooFewAndFiveAreShown() {
        record("t", 0, 2, "v0", 3, 4);
        record("t", 2, 4, "v1", 3, 4);
        assertThat(kinds(judge(0.1, ProcedureStandard.usual(STEPS))))
                .containsExactly(Evidence.Kind.FEW_CASES, Evidence.Kind.ONE_SCORER_DOMINATES);
        record("t", 4, 5, "v1", 3, 4);
        Evidence five = judge(0.1, ProcedureStandard.usual(STEPS));
        assertThat(kinds(five))
                .containsExactly(
                        Evidence.Kind.FEW_CASES_FOR_DECISION,
                        Evidence.Kind.FEW_SCORERS_FOR_DECISION,
                        Evidence.Kind.ONE_SCORER_DOMINATES);
        assertThat(five.shown()).isTrue();
    }

    /** One level throughout must be the scorer's habit with everybody: one other score elsewhere is enough to tell. */
    @Test
    void aScorerOfOneExtremeLevelIsNamedUnlessAnotherTraineeGotAnother() {
        enough();
        record("t", 12, 14, "top", 5, 5);
        record("t", 14, 16, "bottom", 1, 1);
        record("u", 0, 2, "v0", 3, 3);
        Evidence evidence = judge(0.1, ProcedureStandard.usual(STEPS));
        assertThat(evidence.reasons())
                .containsExactly(
                        new Evidence.Reason(Evidence.Kind.BOTTOM_SCORES_ONLY, "bottom", 16, 0),
                        new Evidence.Reason(Evidence.Kind.TOP_SCORES_ONLY, "top", 16, 0));
        record("u", 2, 3, "top", 5, 4);
        record("u", 3, 4, "bottom", 1, 2);
        assertThat(judge(0.1, ProcedureStandard.usual(STEPS)).reasons()).isEmpty();
    }

    /** Two groups that share nobody: how many scorers are on this side, of how many. */
    @Test
    void aGroupOfItsOwnIsNamedWithItsSize() {
        enough();
        record("u", 0, 3, "a0", 3, 2);
        assertThat(judge(0.1, ProcedureStandard.usual(STEPS)).reasons())
                .containsExactly(new Evidence.Reason(Evidence.Kind.NOT_CONNECTED, "", 4, 5));
        record("u", 3, 4, "v0", 3, 2);
        assertThat(judge(0.1, ProcedureStandard.usual(STEPS)).reasons()).isEmpty();
    }

    /** A supervisor on the list who scored nobody cuts nobody off. */
    @Test
    void aSupervisorWithoutScoresIsNoGroup() {
        enough();
        ScoreTableBuilder builder = new ScoreTableBuilder(5, STEPS, List.of("idle"));
        scores.forEach(builder::add);
        ScoreTable table = builder.build();
        PopulationFit fit = new CompetencyModel(ModelSettings.standard(5)).fit(table, PSI, Estimation.GIVEN);
        assertThat(fit.groups()).hasSize(2);
        assertThat(new EvidenceJudge(fit, table, ProcedureStandard.usual(STEPS), 0)
                        .judge(0.1, 1)
                        .reasons())
                .isEmpty();
    }

    @Test
    void aTraineeWithoutScoresHasNoAssessmentsAndNothingElseIsClaimed() {
        record("u", 0, 3, "v0", 3, 2);
        Evidence evidence = judge(1, ProcedureStandard.usual(List.of("A")));
        assertThat(evidence.reasons())
                .containsExactly(
                        new Evidence.Reason(Evidence.Kind.NO_ASSESSMENTS, "", 0, 5),
                        new Evidence.Reason(Evidence.Kind.FEW_CASES, "", 0, 5),
                        new Evidence.Reason(Evidence.Kind.FEW_SCORERS, "", 0, 2),
                        new Evidence.Reason(Evidence.Kind.CRITICAL_STEP_SELDOM_SEEN, "A", 0, 3),
                        new Evidence.Reason(Evidence.Kind.WIDE_BAND, "", 0, 0.5));
        assertThat(evidence.largestShare()).isZero();
    }
}
