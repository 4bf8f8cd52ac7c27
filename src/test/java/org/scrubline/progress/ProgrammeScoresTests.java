package org.scrubline.progress;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.scrubline.support.ASignedSheet.ofDay;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.scrubline.casework.Part;
import org.scrubline.casework.StepState;
import org.scrubline.rubric.Band;
import org.scrubline.scoring.curve.CompetencyModel;
import org.scrubline.scoring.curve.CurvePoint;
import org.scrubline.scoring.curve.Estimation;
import org.scrubline.scoring.curve.ModelSettings;
import org.scrubline.scoring.curve.PopulationFit;
import org.scrubline.scoring.curve.ProcedureStandard;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.support.ASignedSheet;

class ProgrammeScoresTests {

    private static final UUID OTHER = UUID.fromString("00000000-0000-4000-8000-000000000009");

    /** S3 is not part of any case and S4 not seen once: 3 + 3 + 2 scores on S1, S2, S4. */
    @Test
    void onlyScoredStepsOfOperatedCasesEnter() {
        ProgrammeScores scores = scores(List.of(
                ofDay(1).build(),
                ofDay(2).by(2).build(),
                ofDay(3).state("S4", new StepState.NotSeen()).build(),
                ofDay(4).by(3).part(Part.ASSISTED).build()));

        assertThat(scores.table().assessments()).isEqualTo(3);
        assertThat(scores.table().scores()).isEqualTo(8);
        assertThat(scores.table().steps()).containsExactly("S1", "S2", "S4");
        assertThat(scores.table().trainees()).containsExactly(ASignedSheet.TRAINEE.toString());
        assertThat(scores.table().supervisors())
                .containsExactlyInAnyOrder(
                        ASignedSheet.scorer(1).toString(),
                        ASignedSheet.scorer(2).toString());
        assertThat(scores.sheets()).isEqualTo(3);
        assertThat(scores.until()).isEqualTo(ofDay(3).build().signedAt());
    }

    /** 90 days away: (90 - 60) / 30 = 1 month beyond the free 60 days. Two sheets of one case are one case. */
    @Test
    void experienceTimeAndMonthsAwayAreThoseOfTheCases() {
        UUID shared = UUID.randomUUID();
        List<CurvePoint> points = points(List.of(
                ofDay(0).build(),
                ofDay(7).inCase(shared).by(1).build(),
                ofDay(7).inCase(shared).by(2).build(),
                ofDay(97).build()));

        assertThat(points).extracting(CurvePoint::experience).containsExactly(12.0, 13.0, 14.0);
        assertThat(points).extracting(CurvePoint::gapExcess).containsExactly(0.0, 0.0, 1.0);
        assertThat(points)
                .extracting(CurvePoint::order)
                .containsExactly(
                        ofDay(0).build().caseEndedAt().getEpochSecond(),
                        ofDay(7).build().caseEndedAt().getEpochSecond(),
                        ofDay(97).build().caseEndedAt().getEpochSecond());
    }

    /** Bands A, B, C, D: at least B 3 of 4, at least C 2 of 4, at least D 1 of 4. */
    @Test
    void theBandIsThreeCumulativeIndicators() {
        ProgrammeScores scores = scores(List.of(
                ofDay(1).band(Band.A).build(),
                ofDay(2).band(Band.B).build(),
                ofDay(3).band(Band.C).build(),
                ofDay(4).band(Band.D).build()));

        assertThat(fit(scores).caseMix()).containsExactly(.75, .5, .25);
    }

    @Test
    void theOrderOfSheetsChangesNoBitOfTheStoredText() {
        List<SignedSheet> sheets = new ArrayList<>();
        for (int day = 0; day < 12; day++) {
            sheets.add(ofDay(day)
                    .about(day % 2 == 0 ? ASignedSheet.TRAINEE : OTHER)
                    .by(day % 3)
                    .level("S1", 2 + day % 4)
                    .build());
        }
        String text = FitJson.write(fit(scores(sheets)));
        Collections.reverse(sheets);

        assertThat(FitJson.write(fit(scores(sheets)))).isEqualTo(text);
        assertThat(FitJson.write(FitJson.read(text))).isEqualTo(text);
        assertThat(FitJson.read(text)).isEqualTo(fit(scores(sheets)));
    }

    /** The gate of a programme's own values: 300 assessments of 6 trainees by 4 supervisors. */
    @ParameterizedTest
    @CsvSource({"300, 6, 4, ALL", "299, 6, 4, DIFFICULTY", "300, 5, 4, DIFFICULTY", "300, 6, 3, DIFFICULTY"})
    void aProgrammeDecidesItselfFromTheGateOn(int count, int trainees, int scorers, Estimation expected) {
        List<SignedSheet> sheets = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            sheets.add(ofDay(i).about(new UUID(0x4000L, 0x8000000000000000L + i % trainees))
                    .by(i % scorers)
                    .level("S1", 1 + i % 5)
                    .build());
        }

        assertThat(fit(scores(sheets)).estimation()).isEqualTo(expected);
    }

    /** Higher levels raise the curve: the table is read the right way round. */
    @Test
    void higherScoresMakeAHigherCurve() {
        List<SignedSheet> low = new ArrayList<>();
        List<SignedSheet> high = new ArrayList<>();
        for (int day = 0; day < 6; day++) {
            low.add(ofDay(day).by(day % 2).level("S1", 3).level("S2", 3).build());
            high.add(ofDay(day).by(day % 2).level("S1", 5).level("S2", 5).build());
        }

        assertThat(points(high).get(5).level()).isGreaterThan(points(low).get(5).level() + .5);
        assertThat(points(high).get(5).low())
                .isCloseTo(
                        points(high).get(5).level()
                                - 1.6449 * 1.12 * points(high).get(5).sd(),
                        within(1e-3));
    }

    private static List<CurvePoint> points(List<SignedSheet> sheets) {
        ProgrammeScores scores = scores(sheets);
        return CompetencyModel.smooth(
                        fit(scores),
                        scores.table(),
                        ASignedSheet.TRAINEE.toString(),
                        ProcedureStandard.usual(List.of("S1", "S2")))
                .points();
    }

    private static PopulationFit fit(ProgrammeScores scores) {
        return new CompetencyModel(ModelSettings.standard(5)).fit(scores.table());
    }

    private static ProgrammeScores scores(List<SignedSheet> sheets) {
        return ProgrammeScores.of(sheets, Map.of(ASignedSheet.TRAINEE, 12, OTHER, 12));
    }
}
