package org.scrubline.scoring.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class MeasurementChartTests {

    /** NIST/SEMATECH e-Handbook of Statistical Methods, section 6.3.2.4, worked example; figures from memory. */
    @Test
    void theAverageFollowsTheHandbooksExample() {
        EwmaChart chart = new EwmaChart(.3, 50, 2.0539, 3);
        double[] x = {
            52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4,
            53.6, 52.1
        };
        double[] printed = {
            50.60, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52, 50.05, 49.38,
            49.92, 50.73, 51.23, 51.94, 51.99
        };
        List<Double> path = chart.path(x);
        for (int i = 0; i < x.length; i++) {
            assertThat(path.get(i)).as("value %s", i + 1).isCloseTo(printed[i], within(.0051));
        }
        assertThat(chart.upperLimit()).isCloseTo(52.5884, within(5e-4));
        assertThat(chart.lowerLimit()).isCloseTo(47.4115, within(5e-4));
    }

    @Test
    void aFullWeightLeavesTheValuesAsTheyAre() {
        assertThat(new EwmaChart(1, 0, 1, 3).path(4, -2, 9)).containsExactly(4.0, -2.0, 9.0);
        assertThat(new EwmaChart(1, 0, 2, 3).upperLimit()).isEqualTo(6);
    }

    @Test
    void mirroredValuesExchangeTheTwoSidesOfTheTabularChart() {
        double[] x = new SplittableRandom(5).doubles(40, -2, 2).toArray();
        TabularCusum chart = new TabularCusum(0, .5, 2);
        List<TabularCusum.Point> path = chart.path(x);
        List<TabularCusum.Point> mirrored =
                chart.path(Arrays.stream(x).map(v -> -v).toArray());
        for (int i = 0; i < x.length; i++) {
            assertThat(mirrored.get(i).high()).isEqualTo(path.get(i).low());
            assertThat(mirrored.get(i).sum()).isEqualTo(-path.get(i).sum());
        }
        assertThat(TabularCusum.firstSignal(mirrored)).isEqualTo(TabularCusum.firstSignal(path));
    }

    @Test
    void theTabularChartSignalsOnlyAboveItsLimit() {
        TabularCusum chart = new TabularCusum(0, 0, 2);
        assertThat(TabularCusum.firstSignal(chart.path(1, 1))).isEmpty();
        assertThat(TabularCusum.firstSignal(chart.path(1, 1, .5))).hasValue(3);
        assertThat(TabularCusum.firstSignal(chart.path(-1, -2))).hasValue(2);
    }

    /** The four constants 0.69, 0.12, 0.15 and 2.71 of p0 = 10 %, p1 = 20 %, both errors 10 %; from memory. */
    @Test
    void theSequentialTestHasThePublishedLines() {
        SequentialTest test = new SequentialTest(.1, .2, .1, .1);
        assertThat(test.failureEvidence()).isCloseTo(.69, within(.005));
        assertThat(test.successEvidence()).isCloseTo(.12, within(.005));
        assertThat(test.slope()).isCloseTo(.15, within(.005));
        assertThat(test.upperIntercept()).isCloseTo(2.71, within(.005)).isEqualTo(test.lowerIntercept());
    }

    @Test
    void smallerErrorsMoveTheLinesApart() {
        SequentialTest loose = new SequentialTest(.1, .2, .2, .2);
        SequentialTest strict = new SequentialTest(.1, .2, .01, .2);
        assertThat(strict.upperIntercept()).isGreaterThan(loose.upperIntercept());
        assertThat(strict.slope()).isEqualTo(loose.slope()).isBetween(.1, .2);
    }

    @Test
    void designsWithoutMeaningAreRefused() {
        assertThatIllegalArgumentException().isThrownBy(() -> new EwmaChart(0, 0, 1, 3));
        assertThatIllegalArgumentException().isThrownBy(() -> new EwmaChart(.2, 0, -1, 3));
        assertThatIllegalArgumentException().isThrownBy(() -> new TabularCusum(0, -1, 3));
        assertThatIllegalArgumentException().isThrownBy(() -> new TabularCusum(0, 1, 3).path());
        assertThatIllegalArgumentException().isThrownBy(() -> new SequentialTest(.2, .1, .1, .1));
        assertThatIllegalArgumentException().isThrownBy(() -> new SequentialTest(.1, .2, .6, .5));
    }
}
