package org.scrubline.committee.pack;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.scrubline.committee.pack.PackContent.AskLine;

class AskLineTests {

    @Test
    void aNumberThatIsHighEnoughIsNotWhatIsMissing() {
        assertThat(line(Ask.MODEL, 99, false).fulfilled()).isTrue();
        assertThat(line(Ask.MODEL, 80, false).fulfilled()).isTrue();
        assertThat(line(Ask.MODEL, 79, false).fulfilled()).isFalse();
        assertThat(line(Ask.MODEL, 81, true).fulfilled()).isTrue();
    }

    /** What is counted is met or not as it was frozen. */
    @Test
    void everyOtherLineIsWhatItSays() {
        assertThat(line(Ask.EVENT_HANDLED, 99, false).fulfilled()).isFalse();
        assertThat(line(Ask.CLEAN_RUN, 2, true).fulfilled()).isTrue();
    }

    private static AskLine line(Ask ask, int has, boolean met) {
        return new AskLine(ask, has, 80, met, List.of());
    }
}
