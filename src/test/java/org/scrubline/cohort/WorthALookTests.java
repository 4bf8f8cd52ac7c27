package org.scrubline.cohort;

import static org.assertj.core.api.Assertions.assertThat;
import static org.scrubline.support.ASignedSheet.ofDay;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.scrubline.people.Person;
import org.scrubline.people.ProgrammeSettings;
import org.scrubline.progress.ProcedureProgress;
import org.scrubline.rubric.Rubric;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.support.ASignedSheet;

class WorthALookTests {

    private static final Person TRAINEE = new Person(ASignedSheet.TRAINEE, "Hadi Nkolaris", true);
    private static final Map<UUID, Rubric> RUBRICS = Map.of(ASignedSheet.VERSION, ASignedSheet.RUBRIC);
    private static final Instant NOW = ASignedSheet.START.plus(Duration.ofDays(30));

    @ParameterizedTest
    @CsvSource({"55, -", "56, -", "57, GAP 57/56", "147, GAP 147/56"})
    void aGapIsLongerThanFiftySixDays(int days, String expected) {
        assertThat(text(row(List.of(), NOW.minus(Duration.ofDays(days))))).isEqualTo(expected);
    }

    @Test
    void aTraineeWithoutACaseHasNoGap() {
        assertThat(text(row(List.of(), null))).isEqualTo("-");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            4         | -
            5         | FEW_SCORERS 1/5
            4 1       | -
            8 3       | -
            8 4       | FEW_SCORERS 2/12
            4 4 4     | FEW_SCORERS 3/12
            3 3 3 3   | -
            7 3 3 3   | ONE_SCORER 7/16
            """)
    void tooFewScorersAreWorthALookOnceThereAreCases(String byScorer, String expected) {
        List<SignedSheet> sheets = new ArrayList<>();
        String[] counts = byScorer.split(" ");
        for (int scorer = 0; scorer < counts.length; scorer++) {
            for (int i = 0; i < Integer.parseInt(counts[scorer]); i++) {
                sheets.add(ofDay(sheets.size()).by(scorer + 1).build());
            }
        }

        assertThat(text(row(sheets))).isEqualTo(expected);
    }

    /** Wilson's upper end by hand: 3 of 8 .694; 4 of 8 .785; 5 of 8 .863; 0 of 7 would be .354 but has too few scores. */
    @ParameterizedTest
    @CsvSource({"3, 8, LOW_STEP 3/8", "4, 8, LOW_STEP 4/8", "5, 8, -", "0, 7, -"})
    void aCriticalStepIsWorthALookWhenItsWholeIntervalIsBelowEighty(int high, int scored, String expected) {
        assertThat(text(row(scores(scored, day -> day < high ? 4 : 3, day -> 1 + day % 4))))
                .isEqualTo(expected);
    }

    @Test
    void aStepAsLowAsTheOthersRaisesNothing() {
        List<SignedSheet> sheets = IntStream.range(0, 12)
                .mapToObj(day -> {
                    ASignedSheet sheet = ofDay(day).by(1 + day % 4);
                    ASignedSheet.RUBRIC.steps().forEach(step -> sheet.level(step.code(), day < 4 ? 4 : 3));
                    return sheet.build();
                })
                .toList();

        assertThat(text(row(sheets))).isEqualTo("-");
    }

    @Test
    void oneSternScorerRaisesNothing() {
        assertThat(text(row(scores(12, day -> day % 2 == 0 ? 2 : 5, day -> day % 2 == 0 ? 1 : 2 + day % 5 % 3))))
                .as("6 of 12 low, all from one scorer")
                .doesNotContain("LOW_STEP");
    }

    @Test
    void oneCaseRaisesNothing() {
        UUID one = UUID.randomUUID();
        List<SignedSheet> sheets = IntStream.rangeClosed(1, 8)
                .mapToObj(
                        scorer -> ofDay(1).inCase(one).by(scorer).level("S1", 2).build())
                .toList();

        assertThat(text(row(sheets))).isEqualTo("-");
    }

    @Test
    void aStepThatIsNotCriticalRaisesNothing() {
        List<SignedSheet> sheets = IntStream.range(0, 8)
                .mapToObj(day -> ofDay(day).by(1 + day % 4).level("S4", 1).build())
                .toList();

        assertThat(text(row(sheets))).isEqualTo("-");
    }

    private static List<SignedSheet> scores(int n, IntFunction<Integer> level, IntFunction<Integer> scorer) {
        return IntStream.range(0, n)
                .mapToObj(day -> ofDay(day)
                        .by(scorer.apply(day))
                        .level("S1", level.apply(day))
                        .build())
                .toList();
    }

    private static TraineeRow row(List<SignedSheet> sheets) {
        return row(sheets, NOW);
    }

    private static TraineeRow row(List<SignedSheet> sheets, @Nullable Instant last) {
        return new TraineeRow(
                TRAINEE,
                ProcedureProgress.of(sheets, RUBRICS::get, ProgrammeSettings.DEFAULTS)
                        .orElse(null),
                0,
                last);
    }

    private static String text(TraineeRow row) {
        String all = String.join(
                " ",
                WorthALook.in(row, NOW, ProgrammeSettings.DEFAULTS).stream()
                        .map(look -> "%s %d/%d".formatted(look.kind(), look.has(), look.of()))
                        .toList());
        return all.isEmpty() ? "-" : all;
    }
}
