package org.scrubline.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The edges of every check: the last value let through, the first refused, and the sentence it is refused with. */
class RequireTests {

    private static void refused(ThrowingCallable check, String sentence) {
        assertThatIllegalArgumentException().isThrownBy(check).withMessage(sentence);
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.MIN_VALUE, .5, 0.9999999999999999})
    void insideTheUnitIsGivenBack(double p) {
        assertThat(Require.insideUnit("p", p)).isEqualTo(p);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1, -.1, 1.1, Double.NaN})
    void theEndsOfTheUnitAreNotInside(double p) {
        refused(
                () -> Require.insideUnit("The confidence", p),
                "The confidence must lie between 0 and 1, both excluded, but is " + p + ".");
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, .5, 1})
    void probabilitiesIncludeTheEnds(double p) {
        assertThat(Require.probability("p", p)).isEqualTo(p);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-Double.MIN_VALUE, 1.0000000000000002, Double.NaN})
    void beyondTheEndsIsNoProbability(double p) {
        refused(() -> Require.probability("A share", p), "A share must lie from 0 to 1, but is " + p + ".");
    }

    @Test
    void aPositiveNumberIsAboveNothingAndFinite() {
        assertThat(Require.positive("s", Double.MIN_VALUE)).isEqualTo(Double.MIN_VALUE);
        refused(() -> Require.positive("The spread", 0), "The spread must be a number above 0, but is 0.0.");
        refused(
                () -> Require.positive("The spread", Double.POSITIVE_INFINITY),
                "The spread must be a number above 0, but is Infinity.");
        refused(() -> Require.positive("The spread", Double.NaN), "The spread must be a number above 0, but is NaN.");
    }

    @Test
    void everyValueOfAnArrayMustBeANumberAndThereMustBeEnough() {
        assertThat(Require.finite("x", -3.5)).isEqualTo(-3.5);
        double[] two = {1, 2};
        assertThat(Require.finite("x", two, 2)).isSameAs(two);
        refused(() -> Require.finite("The ages", two, 3), "The ages needs at least 3 values, but has 2.");
        refused(
                () -> Require.finite("The ages", new double[] {1, Double.NaN}, 2),
                "Every value of the ages must be a number, but is NaN.");
        refused(
                () -> Require.finite("ages", new double[] {Double.NEGATIVE_INFINITY}, 1),
                "Every value of ages must be a number, but is -Infinity.");
    }

    @Test
    void countsAreAtLeastTheLeast() {
        assertThat(Require.atLeast("n", 2, 2)).isEqualTo(2);
        refused(
                () -> Require.atLeast("The number of raters", 1, 2),
                "The number of raters must be 2 or more, but is 1.");
    }

    @Test
    void listsHoldSomethingAndLengthsAgree() {
        List<String> one = List.of("a");
        assertThat(Require.notEmpty("The list", one)).isSameAs(one);
        refused(() -> Require.notEmpty("The list", List.of()), "The list is empty.");
        assertThatCode(() -> Require.sameLength("x", 3, "y", 3)).doesNotThrowAnyException();
        refused(() -> Require.sameLength("x", 3, "y", 4), "x has 3 values and y has 4; they must agree.");
    }

    @Test
    void aTableIsRectangularFiniteAndLargeEnough() {
        double[][] table = {{1, 2}, {3, 4}};
        assertThat(Require.table("scores", table, 2, 2)).isSameAs(table);
        refused(() -> Require.table("scores", table, 3, 2), "scores needs at least 3 rows, but has 2.");
        refused(() -> Require.table("scores", table, 2, 3), "scores needs at least 3 columns, but has 2.");
        refused(
                () -> Require.table("scores", new double[][] {{1, 2}, {3}}, 2, 1),
                "The first row of scores has 2 values and another row has 1; they must agree.");
        refused(
                () -> Require.table("scores", new double[][] {{1, 2}, {3, Double.NaN}}, 2, 2),
                "Every value of scores must be a number, but is NaN.");
    }
}
