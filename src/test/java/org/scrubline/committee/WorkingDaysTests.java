package org.scrubline.committee;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Days of the week of November and December 2026 as any calendar has them: 27 November is a Friday. */
class WorkingDaysTests {

    @ParameterizedTest
    @CsvSource({
        "2026-11-27, 0, 2026-11-27",
        "2026-11-27, 1, 2026-11-30",
        "2026-11-28, 1, 2026-11-30",
        "2026-11-26, 10, 2026-12-10",
        "2026-11-29, 10, 2026-12-11"
    })
    void saturdaysAndSundaysDoNotCount(LocalDate from, int days, LocalDate due) {
        assertThat(WorkingDays.after(from, days)).isEqualTo(due);
    }
}
