package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

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

    /** Mean and spread of the population at n cases, by the formulas of the model. */
    @Test
    void theRangeIsThePopulationsLawAtEachExperience() {
        Psi psi = fit.psi();
        List<ExpectedRange> levels = ExpectedRange.levels(fit, 4, 30);
        List<ExpectedRange> chances = ExpectedRange.chances(fit, "S04", 3, 30);
        int step = fit.steps().indexOf("S04");
        double harder = psi.difficulty().get(step) + psi.threshold(3) + fit.panelSeverity();
        for (int x = 0; x < 3; x++) {
            harder += psi.complexity().get(x) * fit.caseMix().get(x);
        }
        for (int n = 0; n <= 30; n += 10) {
            double f = 1 - Math.exp(-n / 20.0);
            double variance = square(psi.levelSd()) + square(f * psi.gainSd()) + (n + 1) * psi.walk();
            double middle = psi.gain() * f - psi.threshold(4) - fit.panelSeverity();
            double half = 1.2815515655446004 * Math.sqrt(variance + square(psi.stepSd()) / 22);
            assertThat(levels.get(n).experience()).isEqualTo(n);
            assertThat(levels.get(n).low()).isCloseTo(middle - half, within(1e-9));
            assertThat(levels.get(n).middle()).isCloseTo(middle, within(1e-9));
            assertThat(levels.get(n).high()).isCloseTo(middle + half, within(1e-9));
            double at = psi.gain() * f - harder;
            double wide = 1.2815515655446004 * Math.sqrt(variance + square(psi.stepSd()));
            assertThat(chances.get(n).experience()).isEqualTo(n);
            assertThat(chances.get(n).low()).isCloseTo(chance(at - wide), within(1e-5));
            assertThat(chances.get(n).middle()).isCloseTo(chance(at), within(1e-5));
            assertThat(chances.get(n).high()).isCloseTo(chance(at + wide), within(1e-5));
        }
    }

    private double chance(double above) {
        double sum = 0;
        double total = 0;
        for (int q = 0; q <= 400; q++) {
            double z = -8 + q / 25.0;
            double weight = Math.exp(-z * z / 2);
            sum += weight / (1 + Math.exp(-above - fit.psi().assessmentSd() * z));
            total += weight;
        }
        return sum / total;
    }

    private static double square(double x) {
        return x * x;
    }
}
