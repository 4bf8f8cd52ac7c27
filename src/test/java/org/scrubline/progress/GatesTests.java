package org.scrubline.progress;

import static org.assertj.core.api.Assertions.assertThat;
import static org.scrubline.support.ASignedSheet.ofDay;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.scrubline.casework.StepState;
import org.scrubline.people.ProgrammeSettings;
import org.scrubline.people.SettingKey;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.support.ASignedSheet;

class GatesTests {

    /** Cases, and how many of them the first, second … scorer signs. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            3 1       | CASES 4/5            | CASES 4/12 SCORERS 2/4 ONE_SCORER 3/4
            5         | SCORERS 1/2          | CASES 5/12 SCORERS 1/4 ONE_SCORER 5/5
            4 1       | -                    | CASES 5/12 SCORERS 2/4 ONE_SCORER 4/5
            4 3 4     | -                    | CASES 11/12 SCORERS 3/4
            4 4 4     | -                    | SCORERS 3/4
            3 3 3 2   | -                    | CASES 11/12
            3 3 3 3   | -                    | -
            6 3 3 3   | -                    | -
            7 3 3 3   | -                    | ONE_SCORER 7/16
            5 4 3 1   | -                    | -
            """)
    void eachGateOpensAtItsNumber(String byScorer, String shown, String supports) {
        Gates gates = EvidenceTests.progress(signedBy(byScorer)).gates();

        assertThat(text(gates.shown())).isEqualTo(shown);
        assertThat(text(gates.supports())).isEqualTo(supports);
        assertThat(gates.open()).isEqualTo(shown.equals("-"));
    }

    @ParameterizedTest
    @CsvSource({"0, CRITICAL_STEP 0/3", "2, CRITICAL_STEP 2/3", "3, -"})
    void eachCriticalStepNeedsThreeScores(int scored, String shown) {
        List<SignedSheet> sheets = new ArrayList<>();
        for (int day = 0; day < 6; day++) {
            StepState state = day < scored ? new StepState.Scored(2) : new StepState.NotSeen();
            sheets.add(ofDay(day).by(day % 2).state("S2", state).build());
        }

        assertThat(text(EvidenceTests.progress(sheets).gates().shown())).isEqualTo(shown);
    }

    @Test
    void aStepOfConvertedCasesHoldsNoGateShut() {
        Gates gates = EvidenceTests.progress(signedBy("3 3")).gates();

        assertThat(gates.open()).as("S3 is critical but not part of any case").isTrue();
    }

    @Test
    void aSheetAwaitingItsCountersignatureCountsTowardNoGateAndStaysInTheEvidence() {
        List<SignedSheet> sheets = new ArrayList<>(signedBy("3 3 3 2"));
        sheets.add(ofDay(20).by(4).awaitingCountersignature().build());
        ProcedureProgress awaiting = EvidenceTests.progress(sheets);
        assertThat(text(awaiting.gates().supports())).isEqualTo("CASES 11/12");
        assertThat(awaiting.evidence().cases()).hasSize(12);
        assertThat(awaiting.evidence().awaiting()).isEqualTo(1);

        sheets.set(11, ofDay(20).by(4).build());
        assertThat(text(EvidenceTests.progress(sheets).gates().supports())).isEqualTo("-");
    }

    @Test
    void aCriticalStepScoredOnlyWhereASecondSignatureIsMissingHoldsTheGateShut() {
        List<SignedSheet> sheets = new ArrayList<>();
        for (int day = 0; day < 8; day++) {
            ASignedSheet sheet = ofDay(day).by(day % 2);
            sheets.add(
                    day < 3
                            ? sheet.awaitingCountersignature().build()
                            : sheet.state("S2", new StepState.NotSeen()).build());
        }
        assertThat(text(EvidenceTests.progress(sheets).gates().shown())).isEqualTo("CRITICAL_STEP 0/3");
    }

    @Test
    void theNumbersAreThoseOfTheProgramme() {
        ProgrammeSettings stricter =
                new ProgrammeSettings(Map.of(SettingKey.SHOWN_CASES, 7, SettingKey.SHOWN_STEP_SCORES, 8));
        Gates gates = ProcedureProgress.of(signedBy("3 3"), EvidenceTests.RUBRICS::get, stricter)
                .orElseThrow()
                .gates();
        assertThat(text(gates.shown())).isEqualTo("CASES 6/7 CRITICAL_STEP 6/8 CRITICAL_STEP 6/8");
    }

    private static List<SignedSheet> signedBy(String byScorer) {
        List<SignedSheet> sheets = new ArrayList<>();
        String[] counts = byScorer.split(" ");
        for (int scorer = 0; scorer < counts.length; scorer++) {
            for (int i = 0; i < Integer.parseInt(counts[scorer]); i++) {
                sheets.add(ofDay(sheets.size()).by(scorer + 1).build());
            }
        }
        return sheets;
    }

    private static String text(List<Shortfall> shortfalls) {
        String all = String.join(
                " ",
                shortfalls.stream()
                        .map(one -> "%s %d/%d".formatted(one.kind(), one.has(), one.needs()))
                        .toList());
        return all.isEmpty() ? "-" : all;
    }
}
