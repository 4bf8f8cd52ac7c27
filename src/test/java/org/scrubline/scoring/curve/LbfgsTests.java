package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** The search step by step where every step can be worked out by hand, and its cost where it cannot. */
class LbfgsTests {

    private final List<double[]> points = new ArrayList<>();

    private double[] minimise(Lbfgs.Function function, double tolerance, double... start) {
        points.clear();
        return Lbfgs.minimise(
                (x, g) -> {
                    points.add(x.clone());
                    return function.valueAndGradient(x, g);
                },
                start,
                tolerance);
    }

    private static Lbfgs.Function line(DoubleUnaryOperator value, DoubleUnaryOperator slope) {
        return (x, g) -> {
            g[0] = slope.applyAsDouble(x[0]);
            return value.applyAsDouble(x[0]);
        };
    }

    private static Lbfgs.Function bowl(double bottom, double curvature) {
        return line(x -> curvature * (x - bottom) * (x - bottom) / 2, x -> curvature * (x - bottom));
    }

    private void visited(double... expected) {
        double[] first =
                points.stream().limit(expected.length).mapToDouble(x -> x[0]).toArray();
        assertThat(first).containsExactly(expected, within(1e-9));
    }

    /** The first step is as long as the gradient, but not longer than 1; then twice as far until the slope has eased. */
    @Test
    void farFromTheBottomTheFirstStepIsDoubled() {
        assertThat(minimise(bowl(100, 1), 1e-9, 0)).containsExactly(new double[] {100}, within(1e-9));
        visited(0, 1, 2, 4, 8, 16, 100);
        assertThat(points).hasSize(7);
        minimise(bowl(0, 1), 1e-9, 0.5);
        visited(0.5, 0);
        assertThat(points).hasSize(2);
    }

    /** After a step too far the parabola through value, slope and value shows the bottom of a bowl. */
    @Test
    void aStepTooFarIsCorrectedByAParabola() {
        assertThat(minimise(bowl(0, 10), 1e-9, 0.3)[0]).isCloseTo(0, within(1e-9));
        visited(0.3, -0.7, 0);
        assertThat(points).hasSize(3);
    }

    /** A parabola that points back to the start is not believed: a tenth of the way is the least. */
    @Test
    void aCliffIsApproachedByATenth() {
        minimise(line(x -> x < 0 ? 1e6 : 5 * x * x, x -> 10 * x), 1e-9, 0.3);
        visited(0.3, -0.7, 0.2);
    }

    /** Where there is no value there is no parabola either: half the way. */
    @Test
    void aWallIsApproachedByHalves() {
        minimise(line(x -> x < 0 ? Double.NaN : 5 * x * x, x -> 10 * x), 1e-9, 0.3);
        visited(0.3, -0.7, -0.2, 0.05);
        minimise(line(x -> x < 0 ? Double.POSITIVE_INFINITY : 5 * x * x, x -> 10 * x), 1e-9, 0.3);
        visited(0.3, -0.7, -0.2, 0.05);
    }

    /** Beyond the bottom but lower, on a slope too steep: the bracket turns round and the bottom at .96 is found. */
    @Test
    void aSteepSlopeBeyondTheBottomTurnsTheSearchRound() {
        Lbfgs.Function hook = line(
                x -> -x + (x > 0.95 ? 50 * (x - 0.95) * (x - 0.95) : 0), x -> -1 + (x > 0.95 ? 100 * (x - 0.95) : 0));
        assertThat(minimise(hook, 1e-6, 0)[0]).isCloseTo(0.96, within(1e-6));
        double turned = 1 - 0.5 * 4 * 0.5 / (2 * 2.375);
        visited(0, 1, 0.5, turned);
        assertThat(points).hasSizeLessThan(12);
    }

    @Test
    void theStartIsKeptAndABottomAtTheStartIsItself() {
        double[] start = {2};
        assertThat(minimise(bowl(2, 3), 1e-9, start)).containsExactly(2);
        assertThat(points).hasSize(1);
        minimise(bowl(5, 3), 1e-9, start);
        assertThat(start).containsExactly(2);
    }

    /** A slope just at the tolerance is small enough, one above it is not; the largest entry decides, of either sign. */
    @Test
    void theToleranceIsOfTheLargestSlope() {
        minimise(bowl(0, 1), 0.25, 0.25);
        assertThat(points).hasSize(1);
        minimise(bowl(0, 1), 0.25, -0.26);
        assertThat(points).hasSize(2);
    }

    /** H. H. Rosenbrock's valley; BFGS takes 34 steps (Nocedal and Wright, chapter 6, from memory). */
    @Test
    void theCurvedValleyTakesFewEvaluations() {
        double[] best = minimise(
                (x, g) -> {
                    double a = 1 - x[0];
                    double b = x[1] - x[0] * x[0];
                    g[0] = -2 * a - 400 * x[0] * b;
                    g[1] = 200 * b;
                    return a * a + 100 * b * b;
                },
                1e-6,
                -1.2,
                1);
        assertThat(best).containsExactly(new double[] {1, 1}, within(1e-6));
        assertThat(points).hasSizeLessThan(60);
    }

    /** Ten variables with curvatures from 1 to 1000: with a memory of the directions a few dozen, without it thousands. */
    @Test
    void aLongNarrowBowlIsLearnt() {
        for (int seed = 0; seed < 5; seed++) {
            double[] bottom = new Random(seed).doubles(10, -2, 2).toArray();
            double[] best = minimise(
                    (x, g) -> {
                        double sum = 0;
                        for (int i = 0; i < 10; i++) {
                            double curvature = Math.pow(10, i / 3.0);
                            g[i] = curvature * (x[i] - bottom[i]);
                            sum += g[i] * (x[i] - bottom[i]) / 2;
                        }
                        return sum;
                    },
                    1e-6,
                    new double[10]);
            assertThat(best).containsExactly(bottom, within(1e-5));
            assertThat(points).hasSizeLessThan(70);
        }
    }

    /** A slope that leads nowhere lower: after 25 trials the search gives back its start. */
    @Test
    void aSlopeThatLiesLeavesTheStart() {
        assertThat(minimise(line(Math::abs, x -> -2), 1e-6, 0)).containsExactly(0);
        assertThat(points.size()).isBetween(20, 27);
    }

    @Test
    void aKinkIsApproached() {
        assertThat(minimise(line(Math::abs, x -> Math.copySign(1, x)), 1e-6, 3.3)[0])
                .isCloseTo(0, within(1e-3));
    }

    /** At x⁴ the slope dies slowly; progress below 1e-11 ends the search. */
    @Test
    void progressInTheLastDigitsOnlyEndsTheSearch() {
        double[] best = minimise(line(x -> 1 + Math.pow(x, 4), x -> 4 * Math.pow(x, 3)), 0, 1);
        assertThat(Math.pow(best[0], 4)).isLessThan(1e-10);
        assertThat(points).hasSizeLessThan(60);
    }
}
