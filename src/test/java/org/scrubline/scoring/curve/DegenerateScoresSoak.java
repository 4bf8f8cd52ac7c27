package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class DegenerateScoresSoak {

    @Test
    void aThousandRandomDegenerateProgrammesStayBounded() {
        assertThat(DegenerateScoresTests.curvesHeld(1000)).isGreaterThan(2000);
    }
}
