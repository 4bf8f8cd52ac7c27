package org.scrubline.scoring.estimate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.statistics.distribution.PoissonDistribution;
import org.junit.jupiter.api.Test;

class IntervalLawTests {

    @Test
    void exchangingTheGroupsTurnsTheDifferenceRound() {
        for (int x = 0; x <= 10; x++) {
            for (int y = 0; y <= 15; y++) {
                Interval one = ProportionDifference.newcombe(x, 10, y, 15, .95);
                Interval other = ProportionDifference.newcombe(y, 15, x, 10, .95);
                assertThat(one.low()).isCloseTo(-other.high(), within(1e-14)).isBetween(-1.0, 1.0);
                assertThat(one.contains(x / 10.0 - y / 15.0)).isTrue();
            }
        }
    }

    @Test
    void theExactLimitsOfACountLeaveHalfTheErrorInEachTail() {
        for (int count = 0; count < 60; count++) {
            Interval exact = PoissonInterval.exact(count, .95);
            assertThat(PoissonDistribution.of(exact.high()).cumulativeProbability(count))
                    .isCloseTo(.025, within(1e-10));
            if (count > 0) {
                assertThat(PoissonDistribution.of(exact.low()).survivalProbability(count - 1))
                        .isCloseTo(.025, within(1e-10));
                assertThat(exact.low())
                        .isGreaterThan(PoissonInterval.exact(count - 1, .95).low());
            }
        }
        assertThat(PoissonInterval.exact(0, .95).low()).isZero();
    }

    @Test
    void byarsLimitsAreCloseToTheExactOnes() {
        for (int count = 5; count < 60; count++) {
            Interval exact = PoissonInterval.exact(count, .95);
            Interval byar = PoissonInterval.byar(count, .95);
            assertThat(byar.low()).isCloseTo(exact.low(), within(.02));
            assertThat(byar.high()).isCloseTo(exact.high(), within(.02));
        }
        assertThat(PoissonInterval.byar(0, .95).low()).isZero();
        assertThat(PoissonInterval.byar(1, .999).low()).isNotNegative();
    }

    @Test
    void theFunnelNarrowsWithTheCasesAndWidensWithTheTail() {
        FunnelLimits limits = new FunnelLimits(.1);
        for (int n = 10; n < 400; n += 30) {
            double inner = limits.exact(n, .975);
            assertThat(limits.exact(n, .999)).isGreaterThan(inner);
            assertThat(limits.exact(n, .025)).isLessThan(.1).isNotNegative();
            assertThat(limits.exact(n + 300, .975)).isLessThan(inner).isGreaterThan(.1);
            assertThat(limits.exact(n, .975) * n)
                    .isBetween(limits.quantile(n, .975) - 1.0, limits.quantile(n, .975) + 0.0);
        }
        assertThat(limits.normal(900, .975) - .1).isCloseTo(1.959963985 * .01, within(1e-9));
    }

    @Test
    void oneWildUnitMovesPhiLessOnceWinsorised() {
        double[] z = {-1, .5, .2, -.4, 1.1, -.9, .3, .8, -.2, 12};
        assertThat(FunnelDispersion.raw(z)).isGreaterThan(14);
        assertThat(FunnelDispersion.winsorised(.1, z)).isLessThan(1.5);
        assertThat(FunnelDispersion.winsorised(0, z)).isEqualTo(FunnelDispersion.raw(z));
        FunnelLimits limits = new FunnelLimits(.2);
        assertThat(limits.zScore(20, 100)).isZero();
        assertThat(limits.zScore(28, 100)).isCloseTo(2, within(1e-12));
    }

    @Test
    void impossibleCountsAreRefusedWithASentence() {
        assertThatIllegalArgumentException().isThrownBy(() -> ProportionDifference.newcombe(1, 0, 1, 2, .95));
        assertThatIllegalArgumentException().isThrownBy(() -> ProportionDifference.wald(3, 2, 1, 2, .95));
        assertThatIllegalArgumentException().isThrownBy(() -> PoissonInterval.exact(-1, .95));
        assertThatIllegalArgumentException().isThrownBy(() -> new FunnelLimits(0));
        assertThatIllegalArgumentException().isThrownBy(() -> new FunnelLimits(.1).zScore(5, 4));
        assertThatIllegalArgumentException().isThrownBy(() -> FunnelDispersion.winsorised(.5, 1, 2));
        assertThatIllegalArgumentException().isThrownBy(FunnelDispersion::raw);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Interval(2, 1))
                .withMessageEndingWith(".");
    }
}
