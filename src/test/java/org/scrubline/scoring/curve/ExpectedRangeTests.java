package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class ExpectedRangeTests {

    private final SimulatedProgramme programme = new SimulatedProgramme("", 21, 40, 9, 40);
    private final ScoreTable table = programme.table();
    private final PopulationFit fit = new CompetencyModel(ModelSettings.standard(5)).fit(table);

    /** Eight in ten trainees belong inside; with 40 trainees 3 standard errors are 19 points. */
    @Test
    void mostTraineesAreInsideAtTenCases() {
        ExpectedRange at = ExpectedRange.levels(fit, 4, 20).get(10);
        int inside = 0;
        int counted = 0;
        for (int t = 0; t < 40; t++) {
            if (programme.level[t].length > 10) {
                double level = programme.truePanelLevel(t, 10, 4);
                inside += level >= at.low() && level <= at.high() ? 1 : 0;
                counted++;
            }
        }
        assertThat(counted).isGreaterThan(30);
        assertThat((double) inside / counted).isBetween(0.61, 0.99);
    }

    @Test
    void chancesRiseWithExperienceAndStayChances() {
        List<ExpectedRange> range = ExpectedRange.chances(fit, "S04", 4, 60);
        assertThat(range).hasSize(61).allSatisfy(r -> {
            assertThat(r.low()).isBetween(0.0, r.middle());
            assertThat(r.high()).isBetween(r.middle(), 1.0);
        });
        assertThat(range.get(60).middle()).isGreaterThan(range.get(0).middle() + 0.2);
    }
}
