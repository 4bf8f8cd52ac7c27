package org.scrubline.progress;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.scrubline.support.ASignedSheet.ofDay;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.Part;
import org.scrubline.casework.StepState;
import org.scrubline.casework.Verdict;
import org.scrubline.people.ProgrammeSettings;
import org.scrubline.rubric.Family;
import org.scrubline.rubric.Rubric;
import org.scrubline.scoring.estimate.Interval;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.support.ASignedSheet;

class EvidenceTests {

    static final Map<UUID, Rubric> RUBRICS = Map.of(ASignedSheet.VERSION, ASignedSheet.RUBRIC);

    @Test
    void aContestedSheetCountsAndIsCountedAsContested() {
        Evidence evidence = Evidence.of(List.of(ofDay(0).contested().build(), ofDay(1).build(), ofDay(2).build()));

        assertThat(evidence.cases()).hasSize(3);
        assertThat(evidence.contested()).isEqualTo(1);
        assertThat(evidence.cases()).extracting(CountedCase::contested).containsExactly(true, false, false);
    }

    @Test
    void onlyOperatedCasesCount() {
        Evidence evidence = Evidence.of(List.of(
                ofDay(1).part(Part.ASSISTED).build(),
                ofDay(2).part(Part.PARTS).build(),
                ofDay(3).part(Part.WHOLE_CASE).build()));

        assertThat(evidence.cases()).hasSize(2);
        assertThat(evidence.assisted()).isEqualTo(1);
    }

    @Test
    void casesStandInTheOrderTheyEndedWhateverTheOrderOfSignatures() {
        SignedSheet first = ofDay(1).build();
        SignedSheet second = ofDay(2).build();

        assertThat(Evidence.of(List.of(second, first)).cases())
                .extracting(CountedCase::id)
                .containsExactly(first.caseId(), second.caseId());
    }

    @Test
    void aCaseOfTwoSupervisorsIsOneCaseOfTwoSheets() {
        UUID shared = UUID.randomUUID();
        Evidence evidence = Evidence.of(List.of(
                ofDay(1).inCase(shared).by(1).build(),
                ofDay(1).inCase(shared).by(2).level("S1", 2).build()));

        assertThat(evidence.cases()).singleElement().satisfies(one -> {
            assertThat(one.sheets()).hasSize(2);
            assertThat(one.criticalEvent()).as("the worst of the two").isTrue();
        });
        assertThat(evidence.steps().get("S1")).hasSize(2);
        assertThat(evidence.scorers()).isEqualTo(2);
    }

    @Test
    void verdictsAreCountedBySheet() {
        Evidence evidence = Evidence.of(List.of(
                ofDay(1).verdict(Verdict.NOT_YET_SAFE).build(),
                ofDay(2).verdict(Verdict.INDEPENDENT).build(),
                ofDay(3).verdict(Verdict.INDEPENDENT).build()));

        assertThat(evidence.verdicts())
                .containsExactlyInAnyOrderEntriesOf(Map.of(
                        Verdict.NOT_YET_SAFE, 1,
                        Verdict.INDEPENDENT, 2,
                        Verdict.SAFE_WITH_SUPERVISOR_SCRUBBED, 0,
                        Verdict.NO_VERDICT, 0));
    }

    @Test
    void theStatesOfAStepAreNeverMixed() {
        List<SignedSheet> sheets = List.of(
                ofDay(1).level("S1", 1).build(),
                ofDay(2).level("S1", 5).build(),
                ofDay(3).state("S1", new StepState.BySupervisor(StepState.BySupervisor.Cause.PLAN))
                        .build(),
                ofDay(4).state("S1", new StepState.NotPart()).build(),
                ofDay(5).state("S1", new StepState.NotPart()).build(),
                ofDay(6).state("S1", new StepState.NotSeen()).build());
        StepProgress step = progress(sheets).step("S1").orElseThrow();

        assertThat(step.byLevel()).containsExactly(1, 0, 0, 0, 1);
        assertThat(step.scored()).isEqualTo(2);
        assertThat(step.bySupervisor()).isEqualTo(1);
        assertThat(step.notPart()).isEqualTo(2);
        assertThat(step.notSeen()).isEqualTo(1);
    }

    /**
     * 7 of 10 by hand: z² = 3.8415; centre (7 + 1.9207) / 13.8415 = .64449; half width 1.95996 · √(2.1 + .96036) /
     * 13.8415 = .24772.
     */
    @Test
    void theIntervalIsWilsons() {
        StepProgress step =
                progress(levels("S1", 4, 5, 4, 5, 4, 5, 4, 3, 2, 1)).step("S1").orElseThrow();

        Interval interval = step.interval();

        assertThat(step.high()).isEqualTo(7);
        assertThat(interval.low()).isCloseTo(.3968, within(5e-5));
        assertThat(interval.high()).isCloseTo(.8922, within(5e-5));
    }

    /** S1 4 of 6 ends at .903, S2 2 of 6 at .700, by Wilson's formula; S4 is not critical, S3 was never scored. */
    @Test
    void theStepWhoseIntervalEndsLowestIsToPractiseFirst() {
        List<SignedSheet> sheets = IntStream.rangeClosed(1, 6)
                .mapToObj(day -> ofDay(day)
                        .level("S1", day <= 2 ? 3 : 4)
                        .level("S2", day <= 4 ? 3 : 4)
                        .level("S4", 1)
                        .build())
                .toList();

        assertThat(progress(sheets).practiseNext())
                .extracting(step -> step.step().code())
                .containsExactly("S2", "S1");
    }

    @Test
    void aStepNeverBelowFourOrSeldomScoredIsNotToPractise() {
        List<SignedSheet> sheets = List.of(
                ofDay(1).level("S2", 1).build(),
                ofDay(2).level("S2", 1).build(),
                ofDay(3).state("S2", new StepState.NotSeen()).build());

        assertThat(progress(sheets).practiseNext()).isEmpty();
    }

    @Test
    void theNewestVersionNamesTheStepsAndOlderOnesFollow() {
        UUID newer = UUID.randomUUID();
        Rubric next = new Rubric(
                "TRAB_FORNIX",
                "2.0",
                "Small procedure, second version",
                Family.TRABECULECTOMY,
                List.of(ASignedSheet.step("S2", true, false), ASignedSheet.step("S5", true, false)));
        List<SignedSheet> sheets = List.of(
                ofDay(1).build(), ofDay(2).with(next, newer).level("S5", 4).build());

        ProcedureProgress progress = ProcedureProgress.of(
                        sheets,
                        Map.of(ASignedSheet.VERSION, ASignedSheet.RUBRIC, newer, next)::get,
                        ProgrammeSettings.DEFAULTS)
                .orElseThrow();

        assertThat(progress.rubric().version()).isEqualTo("2.0");
        assertThat(progress.steps())
                .extracting(step -> step.step().code() + " " + step.current())
                .containsExactly("S2 true", "S5 true", "S1 false", "S3 false", "S4 false");
        assertThat(progress.gates().shown())
                .extracting(shortfall ->
                        shortfall.step() == null ? "" : shortfall.step().code())
                .as("a step that is gone cannot hold a gate shut")
                .doesNotContain("S1");
    }

    @Test
    void nothingCountedIsNoProgress() {
        assertThat(ProcedureProgress.of(
                        List.of(ofDay(1).part(Part.ASSISTED).build()), RUBRICS::get, ProgrammeSettings.DEFAULTS))
                .isEmpty();
    }

    static ProcedureProgress progress(List<SignedSheet> sheets) {
        return ProcedureProgress.of(sheets, RUBRICS::get, ProgrammeSettings.DEFAULTS)
                .orElseThrow();
    }

    static List<SignedSheet> levels(String step, int... levels) {
        return IntStream.range(0, levels.length)
                .mapToObj(day -> ofDay(day).level(step, levels[day]).build())
                .toList();
    }
}
