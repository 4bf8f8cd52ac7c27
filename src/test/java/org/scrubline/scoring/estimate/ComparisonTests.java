package org.scrubline.scoring.estimate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

class ComparisonTests {

    /** Benjamini and Hochberg, J R Stat Soc B 1995;57:289, the 15 p values of section 3.1; from memory. */
    @Test
    void theArticlesExampleFlagsFourWhereBonferroniFlagsThree() {
        double[] p = {
            .0001, .0004, .0019, .0095, .0201, .0278, .0298, .0344, .0459, .3240, .4262, .5719, .6528, .7590, 1
        };
        assertThat(FalseDiscovery.of(p).flagged(.05)).isEqualTo(4);
        assertThat(FalseDiscovery.flaggedByBonferroni(.05, p)).isEqualTo(3);
    }

    @Test
    void adjustedValuesKeepTheOrderAndAreNeverSmaller() {
        double[] p = new java.util.SplittableRandom(2).doubles(40).toArray();
        List<Double> adjusted = FalseDiscovery.of(p).adjusted();
        for (int i = 0; i < p.length; i++) {
            assertThat(adjusted.get(i)).isBetween(p[i], 1.0);
            for (int j = 0; j < p.length; j++) {
                assertThat(p[i] <= p[j] && adjusted.get(i) > adjusted.get(j)).isFalse();
            }
        }
        assertThat(FalseDiscovery.of(.03).adjusted()).containsExactly(.03);
        assertThatIllegalArgumentException().isThrownBy(() -> FalseDiscovery.of());
        assertThatIllegalArgumentException().isThrownBy(() -> FalseDiscovery.of(.1, 1.2));
    }

    @Test
    void withoutCensoringTheCurveIsTheShareStillWaiting() {
        double[] times = {5, 1, 3, 3, 8};
        boolean[] events = {true, true, true, true, true};
        SurvivalCurve curve = SurvivalCurve.of(times, events);
        assertThat(curve.steps()).extracting(SurvivalCurve.Step::time).containsExactly(1.0, 3.0, 5.0, 8.0);
        double[] shares = {.8, .4, .2, 0};
        for (int i = 0; i < shares.length; i++) {
            SurvivalCurve.Step step = curve.steps().get(i);
            assertThat(step.survival()).isCloseTo(shares[i], within(1e-12));
            if (i < 3) {
                assertThat(step.standardError().orElseThrow())
                        .isCloseTo(Math.sqrt(shares[i] * (1 - shares[i]) / 5), within(1e-12));
            }
        }
        assertThat(curve.steps().get(3).standardError()).isEmpty();
        assertThat(curve.median()).hasValue(3);
    }

    @Test
    void peopleStillWaitingLeaveTheMedianOpen() {
        SurvivalCurve curve = SurvivalCurve.of(new double[] {2, 4, 6}, new boolean[] {true, false, false});
        assertThat(curve.steps()).hasSize(1);
        assertThat(curve.median()).isEmpty();
        assertThat(SurvivalCurve.of(new double[] {2, 4}, new boolean[] {false, false})
                        .steps())
                .isEmpty();
        assertThatIllegalArgumentException().isThrownBy(() -> SurvivalCurve.of(new double[0], new boolean[0]));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SurvivalCurve.of(new double[] {-1}, new boolean[] {true}));
    }

    @Test
    void equalGroupsDoNotDifferAndNamesDoNotMatter() {
        double[] times = {1, 2, 3, 4, 1, 2, 3, 4, 9, 9};
        boolean[] events = {true, true, false, true, true, true, false, true, false, false};
        LogRank equal = LogRank.of(times, events, List.of("a", "a", "a", "a", "b", "b", "b", "b", "a", "b"));
        assertThat(equal.chiSquared().orElseThrow()).isCloseTo(0, within(1e-12));
        assertThat(equal.p().orElseThrow()).isCloseTo(1, within(1e-6));
        List<String> groups = List.of("x", "y", "z", "x", "y", "z", "x", "y", "z", "z");
        List<String> renamed = groups.stream()
                .map(g -> g.equals("x") ? "zz" : g.equals("y") ? "a" : "m")
                .toList();
        LogRank one = LogRank.of(times, events, groups);
        assertThat(LogRank.of(times, events, renamed).chiSquared().orElseThrow())
                .isCloseTo(one.chiSquared().orElseThrow(), within(1e-10));
        assertThat(one.degrees()).isEqualTo(2);
        assertThat(one.groups().values().stream()
                        .mapToDouble(LogRank.Events::expected)
                        .sum())
                .isCloseTo(6, within(1e-12));
    }

    @Test
    void groupsThatNeverMeetCannotBeCompared() {
        LogRank apart = LogRank.of(new double[] {1, 2}, new boolean[] {false, false}, List.of("a", "b"));
        assertThat(apart.chiSquared()).isEmpty();
        assertThatIllegalArgumentException()
                .isThrownBy(
                        () -> LogRank.of(new double[] {1, 2}, new boolean[] {true, true}, Collections.nCopies(2, "a")));
    }

    @Test
    void oneStratumGivesThePlainOddsRatio() {
        MantelHaenszel single = MantelHaenszel.of(Collections.singletonList(new double[][] {{12, 5}, {7, 20}}));
        assertThat(single.commonRatio().orElseThrow()).isCloseTo(12 * 20 / 35.0, within(1e-12));
        assertThat(single.commonRatio()).isEqualTo(single.crudeRatio());
        assertThat(single.woolf()).isEmpty();
        Interval interval = single.interval(.95).orElseThrow();
        double woolfError = Math.sqrt(1 / 12.0 + 1 / 5.0 + 1 / 7.0 + 1 / 20.0);
        assertThat(Math.log(interval.high() / interval.low()) / 2 / 1.959963985)
                .as("in one stratum the variance is Woolf's")
                .isCloseTo(woolfError, within(1e-8));
    }

    @Test
    void exchangingTheGroupsInvertsTheOddsRatio() {
        List<double[][]> strata = List.of(new double[][] {{12, 5}, {7, 20}}, new double[][] {{3, 9}, {4, 11}});
        List<double[][]> exchanged =
                strata.stream().map(t -> new double[][] {t[1], t[0]}).toList();
        MantelHaenszel one = MantelHaenszel.of(strata);
        MantelHaenszel other = MantelHaenszel.of(exchanged);
        assertThat(other.commonRatio().orElseThrow())
                .isCloseTo(1 / one.commonRatio().orElseThrow(), within(1e-12));
        assertThat(other.chiSquared(true).orElseThrow())
                .isCloseTo(one.chiSquared(true).orElseThrow(), within(1e-12));
        assertThat(other.woolf().orElseThrow()).isCloseTo(one.woolf().orElseThrow(), within(1e-12));
        assertThat(one.chiSquared(true).orElseThrow())
                .isLessThan(one.chiSquared(false).orElseThrow());
    }

    @Test
    void emptyMarginsLeaveNothingToCompare() {
        MantelHaenszel empty = MantelHaenszel.of(Collections.singletonList(new double[][] {{3, 0}, {5, 0}}));
        assertThat(empty.commonRatio()).isEmpty();
        assertThat(empty.interval(.95)).isEmpty();
        assertThat(empty.chiSquared(false)).isEmpty();
        assertThatIllegalArgumentException().isThrownBy(() -> MantelHaenszel.of(List.of()));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> MantelHaenszel.of(Collections.singletonList(new double[][] {{1, 2}, {-1, 3}})));
    }
}
