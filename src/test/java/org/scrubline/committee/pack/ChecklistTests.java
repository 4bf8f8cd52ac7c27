package org.scrubline.committee.pack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.Verdict;
import org.scrubline.committee.pack.PackContent.AskLine;
import org.scrubline.rubric.Band;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.support.ASignedSheet;

/** Each row of each level at its boundary. The numbers asked for are the project's own defaults, without a source. */
class ChecklistTests {

    private static final FamilyCases NONE = FamilyCases.of(List.of());

    private static List<SignedSheet> cases(int number, int scorers) {
        return IntStream.range(0, number)
                .mapToObj(i -> ASignedSheet.ofDay(i).by(1 + i % scorers).build())
                .toList();
    }

    private static AskLine row(Checklist checklist, String level, Ask ask) {
        return checklist.rows(level).stream()
                .filter(line -> line.ask() == ask)
                .findFirst()
                .orElseThrow();
    }

    private static Checklist of(List<SignedSheet> sheets) {
        return new Checklist(FamilyCases.of(sheets), NONE, NONE, false);
    }

    @Test
    void theWholeCaseScrubbedAsksForSixCasesOfTwoScorers() {
        assertThat(of(cases(6, 2)).rows("E2")).allMatch(AskLine::met);
        assertThat(row(of(cases(5, 2)), "E2", Ask.CASES))
                .satisfies(line -> assertThat(line.met()).isFalse())
                .satisfies(line -> assertThat(line.has()).isEqualTo(5))
                .satisfies(line -> assertThat(line.records()).hasSize(5));
        assertThat(row(of(cases(6, 1)), "E2", Ask.SCORERS).met()).isFalse();
    }

    @Test
    void oneOfTheLastThreeCasesNotSafeIsNamed() {
        List<SignedSheet> sheets = new ArrayList<>(cases(6, 2));
        sheets.add(ASignedSheet.ofDay(6).verdict(Verdict.NOT_YET_SAFE).build());
        AskLine line = row(of(sheets), "E2", Ask.LAST_SAFE);
        assertThat(line.met()).isFalse();
        assertThat(line.has()).isEqualTo(2);
        sheets.addAll(List.of(
                ASignedSheet.ofDay(7)
                        .verdict(Verdict.SAFE_WITH_SUPERVISOR_SCRUBBED)
                        .build(),
                ASignedSheet.ofDay(8).build(),
                ASignedSheet.ofDay(9).build()));
        assertThat(row(of(sheets), "E2", Ask.LAST_SAFE).met()).isTrue();
    }

    @Test
    void casesOfHarderBandsDoNotCountForTheEasierOnes() {
        List<SignedSheet> sheets = new ArrayList<>(cases(5, 2));
        sheets.add(ASignedSheet.ofDay(9).band(Band.C).build());
        assertThat(row(of(sheets), "E2", Ask.CASES).has()).isEqualTo(5);
    }

    @Test
    void whatAwaitsItsCountersignatureCountsTowardNoRow() {
        List<SignedSheet> sheets = new ArrayList<>(cases(5, 2));
        sheets.add(ASignedSheet.ofDay(9).awaitingCountersignature().build());
        assertThat(row(of(sheets), "E2", Ask.CASES).has()).isEqualTo(5);
        sheets.add(ASignedSheet.ofDay(10).contested().build());
        assertThat(row(of(sheets), "E2", Ask.CASES).has())
                .as("a contested one counts")
                .isEqualTo(6);
    }

    @Test
    void aSignalOfTheChartStandsInForTheCleanRun() {
        List<SignedSheet> sheets = new ArrayList<>(cases(12, 4));
        sheets.add(ASignedSheet.ofDay(20).level("S1", 2).build());
        assertThat(row(of(sheets), "E3", Ask.CLEAN_RUN).met()).isFalse();
        assertThat(row(new Checklist(FamilyCases.of(sheets), NONE, NONE, true), "E3", Ask.CLEAN_RUN)
                        .met())
                .isTrue();
        assertThat(row(of(cases(12, 4)), "E3", Ask.CLEAN_RUN).met()).isTrue();
    }

    @Test
    void aTakeoverIsNoEventHandled() {
        List<SignedSheet> sheets =
                List.of(ASignedSheet.ofDay(1).takeoverOn("S4").build());
        assertThat(row(of(sheets), "E3", Ask.EVENT_HANDLED).met()).isFalse();
    }

    @Test
    void tenCasesMustHaveAKnownOutcomeAtThreeMonths() {
        List<SignedSheet> sheets = cases(30, 5);
        FamilyCases family = FamilyCases.of(sheets);
        Set<UUID> ten = sheets.stream().limit(10).map(SignedSheet::caseId).collect(Collectors.toSet());
        Set<UUID> nine = sheets.stream().limit(9).map(SignedSheet::caseId).collect(Collectors.toSet());
        AskLine met = row(new Checklist(family, NONE, family.among(ten), false), "E4", Ask.OUTCOMES);
        assertThat(met.met()).isTrue();
        assertThat(met.records())
                .containsExactlyElementsOf(
                        sheets.stream().limit(10).map(SignedSheet::id).toList());
        assertThat(row(new Checklist(family, NONE, family.among(nine), false), "E4", Ask.OUTCOMES)
                        .met())
                .isFalse();
        assertThat(row(of(sheets), "E4", Ask.OUTCOMES).met()).isFalse();
        assertThat(row(of(sheets), "E4", Ask.INDEPENDENT_AB).has()).isEqualTo(10);
    }

    @Test
    void postOperativeCareIsAskedForWithItsStepsHigh() {
        FamilyCases low =
                FamilyCases.of(List.of(ASignedSheet.ofDay(1).level("S1", 3).build()));
        FamilyCases high = FamilyCases.of(List.of(ASignedSheet.ofDay(1).build()));
        FamilyCases some = FamilyCases.of(cases(20, 4));
        assertThat(row(new Checklist(some, low, NONE, false), "E4", Ask.CARE_STEPS)
                        .met())
                .isFalse();
        assertThat(row(new Checklist(some, high, NONE, false), "E4", Ask.CARE_STEPS)
                        .met())
                .isTrue();
    }

    @Test
    void otherLevelsHaveNoChecklist() {
        assertThatIllegalArgumentException().isThrownBy(() -> of(cases(1, 1)).rows("E5"));
    }
}
