package org.scrubline.notice;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.LocalTime;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.scrubline.people.ProgrammeSettings;
import org.scrubline.people.SettingKey;

class NoticeSettingsTests {

    @ParameterizedTest
    @CsvSource({
        "20:00, 07:00, 19:59, false",
        "20:00, 07:00, 20:00, true",
        "20:00, 07:00, 00:00, true",
        "20:00, 07:00, 06:59, true",
        "20:00, 07:00, 07:00, false",
        "08:00, 17:00, 07:59, false",
        "08:00, 17:00, 08:00, true",
        "08:00, 17:00, 17:00, false",
        "09:00, 09:00, 09:00, false"
    })
    void quietHoursBeginWithTheirFirstMinuteAndEndBeforeTheirLast(
            LocalTime from, LocalTime until, LocalTime at, boolean quiet) {
        assertThat(new NoticeSettings(from, until, 7, false, "").quietAt(at)).isEqualTo(quiet);
    }

    /** A day, three days and two days before fourteen are this project's own defaults, without a source. */
    @ParameterizedTest
    @CsvSource({"23,", "24, NUDGE", "71, NUDGE", "72, LATE", "287, LATE", "288, CLOSING", "1000, CLOSING"})
    void aStageIsReachedByTheHour(long hours, Stage stage) {
        assertThat(Stage.at(Duration.ofHours(hours), ProgrammeSettings.DEFAULTS).orElse(null))
                .isEqualTo(stage);
    }

    @ParameterizedTest
    @CsvSource({"47, NUDGE", "48, LATE", "119, LATE", "120, CLOSING"})
    void stagesFollowTheSettingsOfTheProgramme(long hours, Stage stage) {
        ProgrammeSettings quick = new ProgrammeSettings(Map.of(SettingKey.LATE_AFTER, 48, SettingKey.CLOSED_AFTER, 7));
        assertThat(Stage.at(Duration.ofHours(hours), quick)).contains(stage);
    }
}
