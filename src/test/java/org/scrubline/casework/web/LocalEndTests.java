package org.scrubline.casework.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Refusal;

/**
 * Changes of the clock as the IANA time zone database has them: London went forward on 29 March 2026 at 01:00 and goes
 * back on 25 October 2026 at 02:00 (last Sundays, Directive 2000/84/EC's rule as kept by the United Kingdom).
 */
class LocalEndTests {

    private static final ZoneId LONDON = ZoneId.of("Europe/London");

    @ParameterizedTest
    @CsvSource({
        "2026-03-12T18:40, 2026-03-12T18:40:00Z",
        "2026-07-01T18:40, 2026-07-01T17:40:00Z",
        "2026-03-29T00:59, 2026-03-29T00:59:00Z",
        "2026-03-29T02:00, 2026-03-29T01:00:00Z",
        "2026-10-25T00:59, 2026-10-24T23:59:00Z",
        "2026-10-25T02:00, 2026-10-25T02:00:00Z"
    })
    void aTimeTheClockShowedOnceIsThatInstant(String typed, Instant instant) {
        assertThat(LocalEnd.read(typed, "", LONDON)).isEqualTo(Attempt.done(instant));
        assertThat(LocalEnd.readings(typed, LONDON)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"2026-03-29T01:00", "2026-03-29T01:30", "2026-03-29T01:59"})
    void aTimeTheClockSkippedIsRefusedWithBothHands(String typed) {
        assertThat(LocalEnd.read(typed, "", LONDON))
                .isEqualTo(Attempt.refused(
                        Refusal.at("endedAt", "refusal.case.end.gap", typed.substring(11), "01:00", "02:00")));
    }

    @Test
    void aTimeTheClockShowedTwiceIsAskedAbout() {
        String typed = "2026-10-25T01:30";

        assertThat(LocalEnd.read(typed, "", LONDON))
                .isEqualTo(Attempt.refused(Refusal.at("endedOffset", "refusal.case.end.twice", "01:30")));
        assertThat(LocalEnd.readings(typed, LONDON)).extracting(Option::value).containsExactly("+01:00", "Z");
    }

    @ParameterizedTest
    @CsvSource({"+01:00, 2026-10-25T00:30:00Z", "Z, 2026-10-25T01:30:00Z"})
    void theAnswerSettlesWhichOfTheTwoItWas(String offset, Instant instant) {
        assertThat(LocalEnd.read("2026-10-25T01:30", offset, LONDON)).isEqualTo(Attempt.done(instant));
    }

    @Test
    void anOffsetTheClockNeverHadThatNightIsNoAnswer() {
        assertThat(LocalEnd.read("2026-10-25T01:30", "+05:30", LONDON))
                .isEqualTo(Attempt.refused(Refusal.at("endedOffset", "refusal.case.end.twice", "01:30")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "yesterday", "2026-03-12", "2026-02-30T10:00", "2026-03-12T25:00"})
    void whatIsNoTimeIsRefused(String typed) {
        assertThat(LocalEnd.read(typed, "", LONDON))
                .isEqualTo(Attempt.refused(Refusal.at("endedAt", "refusal.case.end.form")));
        assertThat(LocalEnd.readings(typed, LONDON)).isEqualTo(List.of());
    }

    @Test
    void anEmptyFieldStartsWithTheMinuteAtTheSite() {
        assertThat(LocalEnd.now(Instant.parse("2026-07-01T17:40:59.123Z"), LONDON))
                .isEqualTo("2026-07-01T18:40");
    }
}
