package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/**
 * The large simulation, some ten minutes: {@code mvn -Psoak test -Dtest=CurveSimulationSoak}. It prints its tables with
 * their standard errors; docs/model.md keeps the last ones. With 60 programmes the standard error of a bin of the assurance
 * was as large as the limit it is held to.
 */
class CurveSimulationSoak {

    private static final int FROM = 500_000;
    private static final int PROGRAMMES = 300;

    @Test
    void bandsAndChancesHold() {
        CurveSimulation own = new CurveSimulation();
        own.ownFit(FROM, PROGRAMMES);
        System.out.println("own fit\n" + own.report());
        assertThat(own.coverage()).isBetween(0.88, 0.92);
        assertThat(own.errorAgainstMovingMean()).isLessThanOrEqualTo(0.5);
        assertThat(own.steps.worst(100)).isLessThan(0.04);
        assertThat(own.wholeCase.worst(40)).isLessThan(0.04);
        assertThat(own.assurance.mostOptimistic(40)).isLessThan(0.04);
    }

    @Test
    void chancesAndForecastsOfNewTraineesHold() {
        for (Estimation estimation : new Estimation[] {Estimation.DIFFICULTY, Estimation.ALL}) {
            CurveSimulation later = new CurveSimulation();
            later.newTrainees(FROM, PROGRAMMES, estimation);
            System.out.println("new trainees, parameters " + estimation + "\n" + later.report());
            assertThat(later.steps.worst(100)).isLessThan(0.04);
            assertThat(later.wholeCase.worst(60)).isLessThan(0.04);
            assertThat(later.assurance.mostOptimistic(100)).isLessThan(0.04);
            assertThat((double) later.forecastsHeld / later.forecasts).isGreaterThanOrEqualTo(0.8);
        }
    }
}
