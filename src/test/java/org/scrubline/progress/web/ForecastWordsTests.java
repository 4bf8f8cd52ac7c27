package org.scrubline.progress.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.scrubline.scoring.curve.Forecast;
import org.scrubline.scoring.curve.LevelStandard;
import org.scrubline.scoring.curve.Readiness;
import org.scrubline.scoring.curve.Support;
import org.scrubline.support.ScrublineTest;
import org.springframework.beans.factory.annotation.Autowired;

/** What is said of further cases, and what is said when nothing can be. */
@ScrublineTest
class ForecastWordsTests {

    private static final String STANDARD = "all critical steps at 4 or 5, in 50 of 100 cases: ";

    @Autowired
    private ForecastWords words;

    @Test
    void aNumberStandsWithItsInterval() {
        assertThat(say(Support.NOT_YET, 5, 12, 31))
                .isEqualTo(STANDARD + "the evidence might support this in about 12 further typical cases"
                        + " (80 % interval 5 to 31).");
        assertThat(say(Support.NOT_YET, 1, 1, 2)).contains("about 1 further typical case (");
    }

    @Test
    void anEndBeyondFortyCasesIsNotPrinted() {
        assertThat(say(Support.NOT_YET, 5, 40, 41)).contains("about 40 further", "80 % interval 5 to more than 40");
        assertThat(say(Support.NOT_YET, 5, 12, Forecast.BEYOND))
                .contains("5 to more than 40")
                .doesNotContain("101");
    }

    @Test
    void beyondFortyCasesNoNumberIsSaid() {
        assertThat(say(Support.NOT_YET, 18, 41, Forecast.BEYOND))
                .contains("the number of further cases cannot be said; more than half", "18 to more than 40");
        assertThat(say(Support.NOT_YET, 41, 90, Forecast.BEYOND))
                .isEqualTo(STANDARD + "the number of further cases cannot be said; it lies beyond 40 as things stand.");
    }

    @Test
    void whatMayBeReachedAlreadyIsNotCalledSupported() {
        assertThat(say(Support.NOT_YET, 0, 0, 9))
                .contains("may be reached already", "does not yet support this", "0 to 9")
                .doesNotContain("might support");
    }

    @Test
    void supportAndTooLittleEvidenceTakeNoForecast() {
        assertThat(say(Support.SUPPORTS, 0, 0, 0)).isEqualTo(STANDARD + "evidence supports this now.");
        assertThat(say(Support.INSUFFICIENT, 0, 0, 3)).contains("cannot be said; insufficient evidence");
    }

    private String say(Support support, int low, int median, int high) {
        return words.sentence(new Readiness(
                new LevelStandard("E4", 4, .5),
                .4,
                .2,
                .6,
                .3,
                List.of(),
                support,
                new Forecast(true, low, median, high, .1, .2, .3)));
    }
}
