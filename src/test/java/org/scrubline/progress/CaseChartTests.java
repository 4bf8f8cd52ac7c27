package org.scrubline.progress;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.scrubline.support.ASignedSheet.ofDay;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.scrubline.people.ProgrammeSettings;
import org.scrubline.scoring.control.LearningCurveCusum;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.support.ASignedSheet;

class CaseChartTests {

    /** By hand: ln(.9 / .7) = .25131 up for a case without an event, ln(.1 / .3) = -1.09861 down, held at 0. */
    @Test
    void theLineClimbsWithoutAndFallsWithACriticalEvent() {
        assertThat(chart("..x.x..").points())
                .extracting(point -> point.chart().value())
                .usingComparatorForType((a, b) -> Math.abs(a - b) < 5e-5 ? 0 : 1, Double.class)
                .containsExactly(.25131, .50263, 0.0, .25131, 0.0, .25131, .50263);
    }

    @Test
    void twelveCleanCasesReachTheLimitOfThirty() {
        assertThat(chart("...........").signal()).as("eleven").isEmpty();
        assertThat(chart("............").signal()).hasValue(12);
        assertThat(ChartDesign.forCases(12, 30).shortestCleanRun()).isEqualTo(12);
    }

    /** After the signal the watch climbs by 1.09861 with each event: three in a row pass 2.99. */
    @Test
    void afterTheSignalEventsRaiseTheWatch() {
        CaseChart chart = chart("............" + "xxx");

        assertThat(chart.signal()).hasValue(12);
        assertThat(chart.worseAgain()).hasValue(15);
        assertThat(chart.points().get(14).chart().value()).isCloseTo(3.29584, within(5e-6));
    }

    @Test
    void theChartIsTheControlRoomsOwn() {
        Random random = new Random(20260312);
        for (int cases = 1; cases <= 75; cases += 7) {
            String history = random.ints(cases, 0, 10)
                    .mapToObj(i -> i < 2 ? "x" : ".")
                    .collect(java.util.stream.Collectors.joining());
            CaseChart chart = chart(history);
            List<Boolean> failures =
                    history.chars().mapToObj(character -> character == 'x').toList();

            assertThat(chart.points())
                    .extracting(CaseChart.Point::chart)
                    .isEqualTo(new LearningCurveCusum(.10, .30, chart.design().limit()).path(failures));
        }
    }

    /** Limits up to 60 cases are the planning table's, each from 4000 simulated series a row. */
    @ParameterizedTest
    @CsvSource({"0, 30, 2.99", "1, 30, 2.99", "30, 30, 2.99", "31, 60, 3.73", "60, 60, 3.73"})
    void theLimitBelongsToThePlannedCases(int cases, int planned, double limit) {
        assertThat(ChartDesign.forCases(cases, 30)).isEqualTo(new ChartDesign(planned, limit));
    }

    /** The exact false-signal probabilities of the simulated limits; the table says about .10. */
    @ParameterizedTest
    @CsvSource({"30, 2.99", "60, 3.73"})
    void theTablesLimitsKeepTheFalseSignalNearOneInTen(int cases, double limit) {
        assertThat(new LearningCurveCusum(.10, .30, limit).signalProbability(.30, cases))
                .isCloseTo(.10, within(.015));
    }

    @ParameterizedTest
    @CsvSource({"61, 90", "90, 90", "91, 120"})
    void beyondSixtyTheSmallestLimitIsComputed(int cases, int planned) {
        ChartDesign design = ChartDesign.forCases(cases, 30);

        assertThat(design.plannedCases()).isEqualTo(planned);
        assertThat(signal(design.limit(), planned)).isLessThanOrEqualTo(.10);
        assertThat(signal(design.limit() - .1, planned)).isGreaterThan(.10);
    }

    @Test
    void aTakeoverOnACriticalStepIsAnEventAndOneElsewhereIsNot() {
        List<SignedSheet> sheets = List.of(
                ofDay(1).takeoverOn("S1").build(),
                ofDay(2).takeoverOn("S4").build(),
                ofDay(3).level("S4", 1).build());

        assertThat(CaseChart.of(Evidence.of(sheets).cases(), ProgrammeSettings.DEFAULTS)
                        .points())
                .extracting(point -> point.counted().criticalEvent())
                .containsExactly(true, false, false);
    }

    @Test
    void aCaseScoredTwiceIsOnePoint() {
        UUID shared = UUID.randomUUID();
        List<SignedSheet> sheets = List.of(
                ofDay(1).inCase(shared).by(1).build(),
                ofDay(1).inCase(shared).by(2).build(),
                ofDay(2).build());

        assertThat(CaseChart.of(Evidence.of(sheets).cases(), ProgrammeSettings.DEFAULTS)
                        .points())
                .hasSize(2);
    }

    @Test
    void aTimeAwayIsLongerThanFiftySixDays() {
        assertThat(CaseChart.daysAway(
                        ASignedSheet.START, ASignedSheet.START.plus(Duration.ofDays(56)), Duration.ofDays(56)))
                .isZero();
        assertThat(CaseChart.daysAway(
                        ASignedSheet.START, ASignedSheet.START.plus(Duration.ofDays(57)), Duration.ofDays(56)))
                .isEqualTo(57);
        assertThat(CaseChart.of(
                                Evidence.of(List.of(ofDay(0).build(), ofDay(147).build()))
                                        .cases(),
                                ProgrammeSettings.DEFAULTS)
                        .points())
                .extracting(CaseChart.Point::daysAway)
                .containsExactly(0, 147);
    }

    private static double signal(double limit, int cases) {
        return new LearningCurveCusum(.10, .30, limit).signalProbability(.30, cases);
    }

    /** A case a day, x with a critical event. */
    private static CaseChart chart(String history) {
        List<SignedSheet> sheets = new ArrayList<>();
        for (int day = 0; day < history.length(); day++) {
            sheets.add(
                    ofDay(day).level("S1", history.charAt(day) == 'x' ? 2 : 4).build());
        }
        return CaseChart.of(Evidence.of(sheets).cases(), ProgrammeSettings.DEFAULTS);
    }
}
