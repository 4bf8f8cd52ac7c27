package org.scrubline.outcome;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.scrubline.scoring.estimate.Interval;

class TallyTests {

    /** Whole percents as worked out by hand in the domain notes of the project, outside this program. */
    @ParameterizedTest
    @CsvSource({"0, 10, 0, 31", "3, 30, 2, 27", "6, 30, 8, 39", "0, 0, 0, 100", "10, 10, 69, 100"})
    void aCountLeavesOpenWhatTheExactIntervalSays(int has, int of, long low, long high) {
        Interval interval = new Tally(has, of).interval();
        assertThat(Math.round(100 * interval.low())).isEqualTo(low);
        assertThat(Math.round(100 * interval.high())).isEqualTo(high);
    }
}
