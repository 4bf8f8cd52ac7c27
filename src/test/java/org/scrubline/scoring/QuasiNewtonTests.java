package org.scrubline.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The search on functions whose minimum is known, and how much work it takes. */
class QuasiNewtonTests {

    /** Counts evaluations of a function and remembers where. */
    private static final class Counted implements QuasiNewton.Objective {
        private final QuasiNewton.Objective inner;
        private final List<double[]> points = new ArrayList<>();

        Counted(QuasiNewton.Objective inner) {
            this.inner = inner;
        }

        @Override
        public double value(double[] x, double[] gradient) {
            points.add(x.clone());
            return inner.value(x, gradient);
        }
    }

    private static QuasiNewton.Objective valley() {
        return (x, g) -> {
            double a = 1 - x[0];
            double b = x[1] - x[0] * x[0];
            g[0] = -2 * a - 400 * x[0] * b;
            g[1] = 200 * b;
            return a * a + 100 * b * b;
        };
    }

    private static QuasiNewton.Objective bowl(double[] bottom, double[] curvature, double height) {
        return (x, g) -> {
            double sum = height;
            for (int i = 0; i < x.length; i++) {
                double away = x[i] - bottom[i];
                sum += curvature[i] * away * away / 2;
                g[i] = curvature[i] * away;
            }
            return sum;
        };
    }

    /**
     * H. H. Rosenbrock's valley from (-1.2, 1): 34 steps of BFGS in Nocedal and Wright, Numerical Optimization, 2nd ed.,
     * chapter 6 (from memory). A search that forgets or bends its curvature takes hundreds.
     */
    @Test
    void theCurvedValleyTakesAsFewStepsAsTheTextbookSays() {
        Counted valley = new Counted(valley());
        QuasiNewton.Minimum minimum = QuasiNewton.minimise(valley, new double[] {-1.2, 1}, 1e-6);
        assertThat(minimum.toArray()).containsExactly(new double[] {1, 1}, within(1e-6));
        assertThat(minimum.value()).isCloseTo(0, within(1e-12));
        assertThat(valley.points).hasSizeLessThan(60);
    }

    /** A quadratic of n variables ends within about n steps once the curvature is learnt. */
    @Test
    void bowlsOfManyShapesEndAtTheirBottom() {
        for (int seed = 0; seed < 10; seed++) {
            Random random = new Random(seed);
            double[] bottom = random.doubles(6, -3, 3).toArray();
            double[] curvature = random.doubles(6, 0.2, 30).toArray();
            Counted bowl = new Counted(bowl(bottom, curvature, -7));
            QuasiNewton.Minimum minimum = QuasiNewton.minimise(bowl, new double[6], 1e-8);
            assertThat(minimum.toArray()).containsExactly(bottom, within(1e-7));
            assertThat(minimum.value()).isCloseTo(-7, within(1e-12));
            assertThat(bowl.points).hasSizeLessThan(40);
        }
    }

    @Test
    void theStartIsKeptAndABottomAtTheStartIsItself() {
        double[] start = {2, -1};
        Counted bowl = new Counted(bowl(start, new double[] {1, 1}, 5));
        assertThat(QuasiNewton.minimise(bowl, start, 1e-8).toArray()).containsExactly(2, -1);
        assertThat(bowl.points).hasSize(1);
        QuasiNewton.minimise(valley(), start, 1e-8);
        assertThat(start).containsExactly(2, -1);
    }

    /** The tolerance is per 1 + |value at the start| / 1000: at 4000 a gradient of 5 tolerances may stay, of 6 not. */
    @Test
    void theToleranceGrowsWithTheValueAtTheStart() {
        assertThat(evaluations(4000, 4.99e-3)).isEqualTo(1);
        assertThat(evaluations(-4000, 4.99e-3)).isEqualTo(1);
        assertThat(evaluations(4000, 5.01e-3)).isGreaterThan(1);
        assertThat(evaluations(0, 1.01e-3)).isGreaterThan(1);
        assertThat(evaluations(0, .99e-3)).isEqualTo(1);
    }

    private static int evaluations(double height, double slope) {
        Counted bowl = new Counted(bowl(new double[] {0}, new double[] {1}, height));
        QuasiNewton.minimise(bowl, new double[] {slope}, 1e-3);
        return bowl.points.size();
    }

    @Test
    void aWallIsNotCrossed() {
        QuasiNewton.Objective walled = (x, g) -> {
            g[0] = 1 - 0.01 / x[0];
            return x[0] <= 0 ? Double.NaN : x[0] - 0.01 * Math.log(x[0]);
        };
        assertThat(QuasiNewton.minimise(walled, new double[] {5}, 1e-9).point().get(0))
                .isCloseTo(0.01, within(1e-8));
    }

    /** A slope that leads nowhere lower: the search starts over once and then says so. */
    @Test
    void aSlopeThatLiesIsNotCalledAMinimum() {
        QuasiNewton.Objective lying = (x, g) -> {
            g[0] = -2;
            return Math.abs(x[0]);
        };
        assertThatIllegalArgumentException()
                .isThrownBy(() -> QuasiNewton.minimise(lying, new double[] {0}, 1e-6))
                .withMessage("The fit does not converge.");
    }

    /** At a kink no slope is 0; the search halves its way there, starts over once and says so. */
    @Test
    void aKinkIsNotCalledAMinimum() {
        QuasiNewton.Objective kink = (x, g) -> {
            g[0] = Math.copySign(1, x[0]);
            return Math.abs(x[0]);
        };
        assertThatIllegalArgumentException()
                .isThrownBy(() -> QuasiNewton.minimise(kink, new double[] {3}, 1e-6))
                .withMessage("The fit does not converge.");
    }

    /** 1000 + c x², with a value of 5e-10 too much wherever the search has not yet been: rounding of a long sum. */
    private static Counted rounding(double c, double start) {
        return new Counted((x, g) -> {
            g[0] = 2 * c * x[0];
            return 1000 + c * x[0] * x[0] + (x[0] == start ? 0 : 5e-10);
        });
    }

    /** Where values differ by rounding alone, a flatter slope is progress; a steeper one is not. */
    @Test
    void theSlopeDecidesWhereValuesDifferByRoundingAlone() {
        double start = 1e-5;
        Counted gentle = rounding(1, start);
        double found = QuasiNewton.minimise(gentle, new double[] {start}, 1e-6).toArray()[0];
        assertThat(Math.abs(found)).isLessThan(1e-6);
        start = 3e-6;
        Counted steep = rounding(3, start);
        QuasiNewton.minimise(steep, new double[] {start}, 1e-7);
        assertThat(steep.points.get(1)[0] / start).isCloseTo(-3.2, within(1e-6));
        assertThat(steep.points.get(2)[0] / start).isCloseTo(-1.1, within(1e-6));
        assertThat(steep.points.get(3)[0] / start).isCloseTo(-.05, within(1e-6));
    }

    /** Curvatures from 1 to 10 000: without a memory of all directions this takes thousands of steps. */
    @Test
    void aLongNarrowBowlIsLearnt() {
        double[] bottom = {1, -2, 3, -4, 5};
        Counted bowl = new Counted(bowl(bottom, new double[] {1, 10, 100, 1000, 10000}, 0));
        assertThat(QuasiNewton.minimise(bowl, new double[5], 1e-8).toArray()).containsExactly(bottom, within(1e-7));
        assertThat(bowl.points).hasSizeLessThan(90);
    }

    /** Rounding in a value of 1e9 hides the last of the way; the slope, good to a thousandth, still counts as found. */
    @Test
    void aMinimumDownToRoundingIsOne() {
        QuasiNewton.Objective rounded = (x, g) -> {
            g[0] = 2 * x[0] + 5e-4;
            return Math.rint(x[0] * x[0] * 1e3);
        };
        assertThat(QuasiNewton.minimise(rounded, new double[] {0}, 1e-6).value())
                .isZero();
    }

    @Test
    void anEndlessDescentIsStopped() {
        Counted endless = new Counted((x, g) -> {
            g[0] = -1;
            return -x[0];
        });
        assertThatIllegalArgumentException()
                .isThrownBy(() -> QuasiNewton.minimise(endless, new double[] {1}, 1e-6))
                .withMessage("The fit does not converge in 500 steps.");
        assertThat(endless.points).hasSizeBetween(501, 600);
    }

    /** Differences of a polynomial of degree four at five points are exact but for rounding. */
    @Test
    void slopesAndCurvaturesOfAPolynomialAreExact() {
        QuasiNewton.Objective f =
                QuasiNewton.differentiated(x -> Math.pow(x[0], 4) + x[0] * x[0] * x[1] + 3 * x[1] * x[1] * x[1], 0.1);
        double[] gradient = new double[2];
        assertThat(f.value(new double[] {1.5, -2}, gradient)).isCloseTo(5.0625 - 4.5 - 24, within(1e-12));
        assertThat(gradient).containsExactly(new double[] {4 * 3.375 - 6, 2.25 + 36}, within(1e-10));
        QuasiNewton.Objective exact = (x, g) -> {
            g[0] = 4 * Math.pow(x[0], 3) + 2 * x[0] * x[1];
            g[1] = x[0] * x[0] + 9 * x[1] * x[1];
            return 0;
        };
        double[][] hessian = QuasiNewton.hessian(exact, new double[] {1.5, -2}, 0.1);
        assertThat(hessian[0]).containsExactly(new double[] {12 * 2.25 - 4, 3}, within(1e-10));
        assertThat(hessian[1]).containsExactly(new double[] {3, -36}, within(1e-10));
    }

    /** (d² - .09)² + (m - 2)² knows d by its square only; from d = 0 the flat top must be left, m stays. */
    @Test
    void aDeviationAtAFlatTopIsSentOffAndOneAtABottomIsLeftAlone() {
        QuasiNewton.Objective top = (x, g) -> {
            double a = x[0] * x[0] - .09;
            g[0] = 4 * x[0] * a;
            g[1] = 2 * (x[1] - 2);
            return a * a + (x[1] - 2) * (x[1] - 2);
        };
        double[] found =
                QuasiNewton.minimise(top, new double[] {0, 0}, 1e-10, 0).toArray();
        assertThat(Math.abs(found[0])).isCloseTo(.3, within(1e-6));
        assertThat(found[1]).isCloseTo(2, within(1e-8));
        Counted bottom = new Counted((x, g) -> {
            g[0] = 2 * x[0];
            return x[0] * x[0];
        });
        assertThat(QuasiNewton.minimise(bottom, new double[] {0}, 1e-10, 0).point())
                .containsExactly(0.0);
        assertThat(bottom.points).extracting(x -> x[0]).containsExactly(0.0, .01, .03, .1, .3, 1.0);
    }

    /** What makes no difference stays at 0, and so does what makes one in the last digits only. */
    @Test
    void aDeviationThatChangesNothingStaysAtNothing() {
        for (double gain : new double[] {0, 1e-11}) {
            QuasiNewton.Objective flat = (x, g) -> {
                g[0] = 0;
                g[1] = 2 * (x[1] - 2);
                return (x[1] - 2) * (x[1] - 2) - (x[0] == 0 ? 0 : gain);
            };
            assertThat(QuasiNewton.minimise(flat, new double[] {0, 0}, 1e-10, 0).toArray()[0])
                    .isZero();
        }
    }

    /** Away from 0 the slope speaks for itself, so nothing is tried. */
    @Test
    void aDeviationAwayFromNothingIsNotTriedAgain() {
        Counted bowl = new Counted(bowl(new double[] {.06}, new double[] {1}, 0));
        QuasiNewton.minimise(bowl, new double[] {.06}, 1e-10, 0);
        assertThat(bowl.points).hasSize(1);
    }
}
