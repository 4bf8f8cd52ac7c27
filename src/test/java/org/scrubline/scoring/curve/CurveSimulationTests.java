package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** A small simulation in every run; {@code CurveSimulationSoak} is the large one. */
class CurveSimulationTests {

    @Test
    void bandsAndChancesHoldOnProgrammesWithTheirOwnFit() {
        CurveSimulation simulation = new CurveSimulation();
        simulation.ownFit(0, 5);
        String report = simulation.report();
        double spread = 3 * simulation.coverageError();
        assertThat(simulation.coverage()).as(report).isBetween(0.88 - spread, 0.92 + spread);
        assertThat(simulation.coverageError()).as(report).isLessThan(0.02);
        assertThat(simulation.errorAgainstMovingMean()).as(report).isLessThanOrEqualTo(0.55);
        assertThat(simulation.steps.worst(40)).as(report).isLessThan(0.04);
        assertThat(simulation.wholeCase.worst(15)).as(report).isLessThan(0.08);
    }

    @Test
    void forecastsOfNewTraineesHold() {
        CurveSimulation simulation = new CurveSimulation();
        simulation.newTrainees(0, 3, Estimation.DIFFICULTY);
        String report = simulation.report();
        assertThat(simulation.forecasts).isGreaterThan(100);
        assertThat((double) simulation.forecastsHeld / simulation.forecasts)
                .as(report)
                .isGreaterThanOrEqualTo(0.8);
        assertThat(simulation.steps.worst(60)).as(report).isLessThan(0.06);
    }
}
