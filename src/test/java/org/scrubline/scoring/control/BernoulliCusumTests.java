package org.scrubline.scoring.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class BernoulliCusumTests {

    /** Steiner et al., Biostatistics 2000;1:441: risk scores 0 and 50, logit -3.68 + .077 score, printed weights. */
    @Test
    void theWeightsAreThePublishedOnes() {
        double atFifty = 1 / (1 + Math.exp(3.68 - .077 * 50));
        double atZero = 1 / (1 + Math.exp(3.68));
        assertThat(LogLikelihoodWeights.forOddsRatio(atZero, 2).failure()).isCloseTo(.67, within(.005));
        assertThat(LogLikelihoodWeights.forOddsRatio(atFifty, 2).success()).isCloseTo(-.43, within(.005));
        assertThat(LogLikelihoodWeights.forOddsRatio(atFifty, 2).failure()).isCloseTo(.26, within(.005));
    }

    @Test
    void theChartRestartsFromZeroAfterASignal() {
        List<Boolean> failures = List.of(true, true, true, true);
        BernoulliCusum chart = BernoulliCusum.between(.05, .10, 1);
        assertThat(chart.path(failures)).extracting(ChartPoint::signal).containsExactly(false, true, false, true);
        BernoulliCusum running = new BernoulliCusum(chart.weights(), 1, false);
        assertThat(running.path(failures)).extracting(ChartPoint::signal).containsExactly(false, true, true, true);
    }

    @Test
    void theChartReachesTheLimitExactlyDespiteRounding() {
        BernoulliCusum chart = new BernoulliCusum(new LogLikelihoodWeights(.1, -.1), .3, true);
        assertThat(chart.path(List.of(true, true, true)).get(2).signal()).isTrue();
        assertThat(chart.runLength(1).average()).isEqualTo(3);
    }

    /** The two-sided absorption of a fair walk: from 0 held at 0, mean time to reach m is m (m + 1). */
    @Test
    void aFairWalkTakesTheTextbookTime() {
        for (int m = 1; m <= 12; m++) {
            assertThat(RunLength.of(1, 1, m, .5).average()).isCloseTo(m * (m + 1.0), within(1e-9));
        }
    }

    @Test
    void theMeanRunLengthIsTheSumOfTheProbabilitiesOfStillRunning() {
        RunLength length = BernoulliCusum.between(.10, .25, 1.7).runLength(.3);
        double sum = 1;
        for (double signalled : length.signalProbabilities(2000)) {
            sum += 1 - signalled;
        }
        assertThat(length.average()).isCloseTo(sum, within(1e-8));
    }

    @Test
    void aWorseRateSignalsSoonerAndAHigherLimitLater() {
        double last = Double.POSITIVE_INFINITY;
        for (double rate = 0; rate <= 1; rate += .1) {
            double average = BernoulliCusum.between(.05, .10, 3).runLength(rate).average();
            assertThat(average).isLessThanOrEqualTo(last);
            last = average;
        }
        assertThat(BernoulliCusum.between(.05, .10, 3).runLength(0).average()).isInfinite();
        last = 0;
        for (double limit = .5; limit < 6; limit += .5) {
            double average =
                    BernoulliCusum.between(.05, .10, limit).runLength(.08).average();
            assertThat(average).isGreaterThanOrEqualTo(last);
            last = average;
        }
    }

    @Test
    void addingSuccessesNeverRaisesTheChart() {
        SplittableRandom random = new SplittableRandom(7);
        BernoulliCusum chart = new BernoulliCusum(LogLikelihoodWeights.between(.1, .2), 100, true);
        for (int trial = 0; trial < 200; trial++) {
            List<Boolean> failures = new ArrayList<>();
            for (int i = 0; i < 30; i++) {
                failures.add(random.nextDouble() < .3);
            }
            List<Boolean> better = new ArrayList<>(failures);
            better.set(random.nextInt(30), false);
            List<ChartPoint> worse = chart.path(failures);
            List<ChartPoint> improved = chart.path(better);
            for (int i = 0; i < 30; i++) {
                assertThat(improved.get(i).value())
                        .isLessThanOrEqualTo(worse.get(i).value());
            }
        }
    }

    @Test
    void aChartForABetterRateClimbsOnSuccess() {
        BernoulliCusum chart = BernoulliCusum.between(.2, .1, 1);
        assertThat(chart.path(Collections.nCopies(20, false)))
                .extracting(ChartPoint::signal)
                .contains(true);
        assertThat(chart.runLength(0).average()).isEqualTo(Math.ceil(1 / Math.log(.9 / .8)));
    }

    @Test
    void weightsOfOneSignAndRatesThatDoNotDifferAreRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new BernoulliCusum(new LogLikelihoodWeights(1, 1), 1, true))
                .withMessageContaining("opposite signs");
        assertThatIllegalArgumentException().isThrownBy(() -> LogLikelihoodWeights.between(.1, .1));
        assertThatIllegalArgumentException().isThrownBy(() -> LogLikelihoodWeights.forOddsRatio(.1, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> RunLength.of(1e-9, 1e-9, 10, .5));
    }
}
