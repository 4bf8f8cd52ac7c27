package org.scrubline.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class NumericsTests {

    @ParameterizedTest
    @ValueSource(doubles = {1e-6, .001, .025, .3, .5, .8, .975, .9999})
    void quantilesWithAClosedFormAreMetToTheLastDigits(double p) {
        assertThat(Distributions.betaQuantile(p, 1, 7)).isCloseTo(-Math.expm1(Math.log1p(-p) / 7), within(1e-14));
        assertThat(Distributions.betaQuantile(p, 7, 1)).isCloseTo(Math.pow(p, 1 / 7.0), within(1e-14));
        assertThat(Distributions.gammaQuantile(p, 1)).isCloseTo(-Math.log1p(-p), within(1e-13));
        double cauchy = -1 / Math.tan(Math.PI * p);
        assertThat(Distributions.tQuantile(p, 1)).isCloseTo(cauchy, within(1e-11 * (1 + Math.abs(cauchy))));
        assertThat(Distributions.fQuantile(p, 2, 2)).isCloseTo(p / (1 - p), within(1e-12 * (1 + p / (1 - p))));
    }

    /** Two-sided 95 % and 99.8 % points of the standard normal distribution, from tables. */
    @Test
    void theNormalPointsAreThoseOfTheTables() {
        assertThat(Distributions.twoSidedZ(.95)).isCloseTo(1.959963984540054, within(1e-14));
        assertThat(Distributions.twoSidedZ(.998)).isCloseTo(3.090232306167813, within(1e-13));
        assertThat(Distributions.normalTwoSided(-1.959963984540054)).isCloseTo(.05, within(1e-15));
        assertThat(Distributions.chiSquaredUpper(3.841458820694124, 1)).isCloseTo(.05, within(1e-14));
    }

    /** Upper tails with a closed form: chi-squared of 2 and F of (2, 2) degrees; and the median of everything. */
    @Test
    void upperTailsWithAClosedFormAreMet() {
        assertThat(Distributions.chiSquaredUpper(3, 2)).isCloseTo(Math.exp(-1.5), within(1e-15));
        assertThat(Distributions.fUpper(3, 2, 2)).isCloseTo(.25, within(1e-14));
        assertThat(Distributions.normalUpper(0)).isEqualTo(.5);
        assertThat(Distributions.normalUpper(1.959963984540054)).isCloseTo(.025, within(1e-15));
        assertThat(Distributions.normalQuantile(.025)).isCloseTo(-1.959963984540054, within(1e-14));
        assertThat(Distributions.normalTwoSided(1.959963984540054)).isCloseTo(.05, within(1e-15));
    }

    /** Quantile and distribution function undo each other, in both tails. Relative, as a small tail keeps its digits. */
    @ParameterizedTest
    @ValueSource(doubles = {1e-9, 1e-5, .02, .5, .98, .99999})
    void aQuantileIsUndoneByItsTail(double p) {
        double f = Distributions.fQuantile(1 - p, 3.5, 11);
        assertThat(Distributions.fUpper(f, 3.5, 11) / p).isCloseTo(1, within(1e-6));
        double t = Distributions.tQuantile(p, 4);
        double stretched = 1 + t * t / 4;
        double closedForm = 0.5 + 0.375 * t / Math.sqrt(stretched) * (1 - t * t / (12 * stretched));
        assertThat(closedForm).isCloseTo(p, within(1e-9));
    }

    @Test
    void aProbabilityOutsideTheUnitHasNoQuantile() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Distributions.normalQuantile(1))
                .withMessageContaining("A probability must lie between 0 and 1");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Distributions.tQuantile(0, 3))
                .withMessageContaining("A probability must lie between 0 and 1");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Distributions.twoSidedZ(1))
                .withMessageContaining("The confidence must lie between 0 and 1");
    }

    @Test
    void theRootIsFoundFromEitherSlope() {
        assertThat(Distributions.root(x -> x * x - 2, 0, 2)).isCloseTo(Math.sqrt(2), within(1e-15));
        assertThat(Distributions.root(x -> 2 - x * x, 0, 2)).isCloseTo(Math.sqrt(2), within(1e-15));
        assertThat(Distributions.root(x -> x - 1e-12, 0, 1)).isCloseTo(1e-12, within(1e-26));
    }

    @Test
    void theBottomOfACurvedValleyIsReached() {
        QuasiNewton.Objective valley =
                QuasiNewton.differentiated(x -> Math.pow(1 - x[0], 2) + 100 * Math.pow(x[1] - x[0] * x[0], 2), 1e-3);
        double[] bottom =
                QuasiNewton.minimise(valley, new double[] {-1.2, 1}, 1e-9).toArray();
        assertThat(bottom[0]).isCloseTo(1, within(1e-7));
        assertThat(bottom[1]).isCloseTo(1, within(1e-7));
        double[][] hessian = QuasiNewton.hessian(valley, bottom, 1e-3);
        assertThat(hessian[0][0]).isCloseTo(802, within(1e-4));
        assertThat(hessian[0][1]).isCloseTo(-400, within(1e-4));
        assertThat(hessian[1][1]).isCloseTo(200, within(1e-4));
    }

    @Test
    void aFlatTopAtZeroDeviationIsLeft() {
        QuasiNewton.Objective hill = QuasiNewton.differentiated(x -> Math.pow(x[0] * x[0] - .04, 2), 1e-3);
        assertThat(QuasiNewton.minimise(hill, new double[] {0}, 1e-9).point().get(0))
                .isZero();
        assertThat(Math.abs(QuasiNewton.minimise(hill, new double[] {0}, 1e-9, 0)
                        .point()
                        .get(0)))
                .isCloseTo(.2, within(1e-4));
    }

    @Test
    void aSearchThatCannotStartOrEndSaysSo() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> QuasiNewton.minimise((x, g) -> Double.NaN, new double[] {1}, 1e-6))
                .withMessageContaining("cannot start");
        QuasiNewton.Objective endless = QuasiNewton.differentiated(x -> -x[0], 1e-3);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> QuasiNewton.minimise(endless, new double[] {1}, 1e-6))
                .withMessageContaining("does not converge");
    }

    @Test
    void quotientsThatDoNotExistAreEmpty() {
        assertThat(Ratio.of(1, 4)).hasValue(.25);
        assertThat(Ratio.of(1, 0)).isEmpty();
        assertThat(Ratio.finite(-2)).hasValue(-2);
        assertThat(Ratio.of(Double.NaN, 1)).isEmpty();
        assertThat(Ratio.finite(Double.POSITIVE_INFINITY)).isEmpty();
    }
}
