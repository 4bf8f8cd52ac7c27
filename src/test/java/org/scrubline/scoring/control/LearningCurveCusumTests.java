package org.scrubline.scoring.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.scrubline.scoring.control.ChartPoint.Stage;

class LearningCurveCusumTests {

    /**
     * The planning table of the documentation: simulation in the project's planning notes (4000 series a line, limits
     * tuned to about 10 % false signals), exact run lengths here. A median of 0 stands for one the notes do not give.
     */
    @ParameterizedTest(name = "N={0}: p0={1}, p1={2}, h={3}")
    @CsvSource({
        "30, .10, .30, 2.99, .85, 18",
        "30, .10, .20, 1.94, .47, 0",
        "60, .10, .30, 3.73, .97, 24",
        "60, .10, .20, 2.64, .70, 0",
        "90, .10, .20, 3.07, .83, 0",
    })
    void theExactRunLengthsReproduceThePlanningTable(
            int n, double p0, double p1, double limit, double power, int median) {
        LearningCurveCusum chart = new LearningCurveCusum(p0, p1, limit);

        assertThat(chart.signalProbability(p1, n)).as("false signal").isCloseTo(.10, within(.02));
        assertThat(chart.signalProbability(p0, n)).as("power").isCloseTo(power, within(.02));
        if (median > 0) {
            assertThat(chart.medianSignalCase(p0, n)).hasValue(median);
        }
    }

    @Test
    void theLimitOfSixtyCasesNeedsFifteenSuccessesInARow() {
        assertThat(new LearningCurveCusum(.10, .30, 3.73).shortestCleanRun()).isEqualTo(15);
    }

    @ParameterizedTest
    @CsvSource({"30, .35", "60, .45", "90, .58"})
    void fiveAgainstTenPercentIsNotTestableInSoFewCases(int n, double tabulatedPower) {
        double limit = LearningCurveCusum.smallestLimit(.05, .10, n, .10);

        // The notes tuned their limit on simulated series, which allows a little more than 10 % false signals.
        assertThat(new LearningCurveCusum(.05, .10, limit).signalProbability(.05, n))
                .isLessThan(.60)
                .isCloseTo(tabulatedPower, within(.04));
    }

    @ParameterizedTest
    @CsvSource({"30, .10, .30", "60, .10, .20", "40, .15, .30"})
    void theSmallestLimitHoldsTheRateAndTheNextLowerHeightDoesNot(int n, double p0, double p1) {
        double limit = LearningCurveCusum.smallestLimit(p0, p1, n, .10);

        assertThat(new LearningCurveCusum(p0, p1, limit).signalProbability(p1, n))
                .isLessThanOrEqualTo(.10);
        assertThat(new LearningCurveCusum(p0, p1, limit - 1e-6).signalProbability(p1, n))
                .as("limits down to the next lower height are the same chart")
                .isCloseTo(new LearningCurveCusum(p0, p1, limit).signalProbability(p1, n), within(1e-12));
        double lower = greatestHeightBelow(limit, new LearningCurveCusum(p0, p1, limit), n);
        assertThat(new LearningCurveCusum(p0, p1, lower).signalProbability(p1, n))
                .isGreaterThan(.10);
    }

    private static double greatestHeightBelow(double limit, LearningCurveCusum chart, int n) {
        double best = 0;
        for (int successes = 1; successes <= n; successes++) {
            for (int failures = 0; failures <= n - successes; failures++) {
                double height = successes * chart.successWeight() + failures * chart.failureWeight();
                best = height < limit - 1e-9 ? Math.max(best, height) : best;
            }
        }
        return best;
    }

    @Test
    void theSmallestLimitOnAGridIsOneStepAboveOneThatFails() {
        double limit = LearningCurveCusum.smallestLimit(.10, .30, 60, .10, .01);

        assertThat(new LearningCurveCusum(.10, .30, limit).signalProbability(.30, 60))
                .isLessThanOrEqualTo(.10);
        assertThat(new LearningCurveCusum(.10, .30, limit - .01).signalProbability(.30, 60))
                .isGreaterThan(.10);
    }

    @Test
    void noLimitIsInventedWhenEvenACleanSeriesIsTooLikelyByChance() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LearningCurveCusum.smallestLimit(.10, .20, 3, .05))
                .withMessageContaining("With 3 cases");
    }

    @Test
    void simulatedSeriesAgreeWithTheExactFigures() {
        LearningCurveCusum chart = new LearningCurveCusum(.10, .30, 2.99);
        SplittableRandom random = new SplittableRandom(20260101);
        int series = 40_000;
        for (double rate : new double[] {.10, .20, .30}) {
            int signals = 0;
            for (int i = 0; i < series; i++) {
                signals += chart.firstSignal(randomSeries(random, rate, 30)).isPresent() ? 1 : 0;
            }
            double exact = chart.signalProbability(rate, 30);
            double standardError = Math.sqrt(exact * (1 - exact) / series);
            assertThat((double) signals / series).isCloseTo(exact, within(4 * standardError));
        }
    }

    @Test
    void everySeriesOfTwelveCasesAddsUpToTheExactProbability() {
        LearningCurveCusum chart = new LearningCurveCusum(.20, .40, 1.5);
        double rate = .25;
        double total = 0;
        for (int bits = 0; bits < 1 << 12; bits++) {
            List<Boolean> failures = new ArrayList<>();
            double probability = 1;
            for (int k = 0; k < 12; k++) {
                boolean failure = (bits >> k & 1) == 1;
                failures.add(failure);
                probability *= failure ? rate : 1 - rate;
            }
            total += chart.firstSignal(failures).isPresent() ? probability : 0;
        }
        assertThat(chart.signalProbability(rate, 12)).isCloseTo(total, within(1e-13));
    }

    @Test
    void theProbabilityOfASignalRisesWithTheCasesAndFallsWithTheLimitAndTheRate() {
        LearningCurveCusum chart = new LearningCurveCusum(.10, .30, 2.5);
        assertThat(chart.runLength(.15).signalProbabilities(80)).isSorted().allMatch(p -> p >= 0 && p <= 1);
        double last = 1;
        for (double rate = 0; rate <= 1; rate += .05) {
            double probability = chart.signalProbability(rate, 40);
            assertThat(probability).isLessThanOrEqualTo(last + 1e-15);
            last = probability;
        }
        last = 1;
        for (double limit = .25; limit < 6; limit += .25) {
            double probability = new LearningCurveCusum(.10, .30, limit).signalProbability(.10, 40);
            assertThat(probability).isLessThanOrEqualTo(last + 1e-15);
            last = probability;
        }
    }

    @Test
    void aFailureTakesAwayMoreThanASuccessBrings() {
        LearningCurveCusum chart = new LearningCurveCusum(.10, .30, 3);
        assertThat(chart.successWeight())
                .isCloseTo(Math.log(.9 / .7), within(1e-15))
                .isPositive();
        assertThat(chart.failureWeight())
                .isCloseTo(Math.log(.1 / .3), within(1e-15))
                .isNegative();
    }

    @Test
    void afterTheSignalTheChartWatchesForAWorseRate() {
        LearningCurveCusum chart = new LearningCurveCusum(.10, .30, 1);
        List<Boolean> failures = new ArrayList<>(List.of(true, false, false, false, false));
        failures.addAll(List.of(true, true, false));

        List<ChartPoint> path = chart.path(failures, BernoulliCusum.between(.10, .30, 2));

        assertThat(chart.firstSignal(failures)).hasValue(5);
        assertThat(path).extracting(ChartPoint::caseNumber).containsExactly(1, 2, 3, 4, 5, 6, 7, 8);
        assertThat(path.get(0).value()).isZero();
        assertThat(path.get(4).value()).isCloseTo(4 * Math.log(.9 / .7), within(1e-12));
        assertThat(path.subList(0, 5)).extracting(ChartPoint::stage).containsOnly(Stage.GATHERING);
        assertThat(path.subList(5, 8)).extracting(ChartPoint::stage).containsOnly(Stage.WATCHING);
        assertThat(path.get(5).value()).isCloseTo(Math.log(3), within(1e-12));
        assertThat(path)
                .extracting(ChartPoint::signal)
                .containsExactly(false, false, false, false, true, false, true, false);
        assertThat(path.get(7).value()).as("restarted from 0, held at 0").isZero();
    }

    @Test
    void aSeriesWithoutCasesHasNoSignal() {
        LearningCurveCusum chart = new LearningCurveCusum(.10, .30, 3);
        assertThat(chart.path(List.of())).isEmpty();
        assertThat(chart.firstSignal(List.of())).isEmpty();
        assertThat(chart.signalProbability(.10, 0)).isZero();
        assertThat(chart.medianSignalCase(.30, 10)).isEqualTo(OptionalInt.empty());
    }

    @ParameterizedTest
    @CsvSource({"0, .3, 1", ".1, 1, 1", ".3, .1, 1", ".2, .2, 1", ".1, .3, 0", ".1, .3, NaN", "NaN, .3, 1"})
    void ratesInTheWrongOrderAndLimitsThatAreNoneAreRefusedWithASentence(double p0, double p1, double limit) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new LearningCurveCusum(p0, p1, limit))
                .withMessageEndingWith(".");
    }

    private static List<Boolean> randomSeries(SplittableRandom random, double rate, int n) {
        List<Boolean> failures = new ArrayList<>(n);
        for (int i = 0; i < n; i++) {
            failures.add(random.nextDouble() < rate);
        }
        return failures;
    }
}
