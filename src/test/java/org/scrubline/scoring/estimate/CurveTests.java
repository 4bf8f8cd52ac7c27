package org.scrubline.scoring.estimate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class CurveTests {

    /** NIST Statistical Reference Datasets, nonlinear regression: both certified start vectors must converge. */
    @ParameterizedTest
    @CsvSource({
        "nist-nls-misra1a, EXP_RISE",
        "nist-nls-danwood, POWER",
        "nist-nls-rat42, LOGISTIC3",
        "nist-nls-chwirut2, DECAY"
    })
    void everyCertifiedStartReachesTheCertifiedValues(String file, CurveShape shape) throws IOException {
        JsonNode reference = reference(file);
        double[][] starts = matrix(reference.get("data").get("starts"));
        assertThat(starts).hasDimensions(2, shape.parameters());
        for (double[] start : starts) {
            LearningCurveFit fit = LearningCurveFit.of(
                    shape,
                    numbers(reference.get("data").get("x")),
                    numbers(reference.get("data").get("y")),
                    start);
            for (int k = 0; k < shape.parameters(); k++) {
                assertClose(fit.parameters().get(k), reference, "b" + (k + 1));
                assertClose(fit.standardErrors().get(k), reference, "b" + (k + 1) + ".se");
            }
            assertClose(fit.residualSquares(), reference, "rss");
        }
    }

    private static void assertClose(double actual, JsonNode reference, String key) {
        for (JsonNode expected : reference.get("expected")) {
            if (expected.get("key").asString().equals(key)) {
                assertThat(actual)
                        .as(key)
                        .isCloseTo(
                                expected.get("value").asDouble(),
                                within(expected.get("abs_tol").asDouble()));
                return;
            }
        }
        throw new AssertionError("The reference has no key " + key);
    }

    private static JsonNode reference(String file) throws IOException {
        try (InputStream in = CurveTests.class.getResourceAsStream("/reference/" + file + ".json")) {
            return JsonMapper.shared().readTree(in);
        }
    }

    private static double[] numbers(JsonNode list) {
        return list.valueStream().mapToDouble(JsonNode::asDouble).toArray();
    }

    private static double[][] matrix(JsonNode rows) {
        return rows.valueStream().map(CurveTests::numbers).toArray(double[][]::new);
    }

    @ParameterizedTest
    @EnumSource(CurveShape.class)
    void aCurveWithoutNoiseIsRecovered(CurveShape shape) {
        double[] truth = shape.parameters() == 2 ? new double[] {4, .3} : new double[] {.5, 1.5, .4};
        double[] x = DoubleStream.iterate(.5, v -> v + .5).limit(20).toArray();
        double[] y = Arrays.stream(x).map(v -> shape.value(v, truth)).toArray();
        double[] start = Arrays.stream(truth).map(b -> 1.3 * b).toArray();
        LearningCurveFit fit = LearningCurveFit.of(shape, x, y, start);
        for (int k = 0; k < truth.length; k++) {
            assertThat(fit.parameters().get(k)).isCloseTo(truth[k], within(1e-8));
        }
        assertThat(fit.residualSquares()).isLessThan(1e-16);
    }

    @ParameterizedTest
    @EnumSource(CurveShape.class)
    void theDerivativesAreThoseOfTheCurve(CurveShape shape) {
        double[] b = shape.parameters() == 2 ? new double[] {4, .3} : new double[] {.5, 1.5, .4};
        for (double x = .5; x < 6; x += .7) {
            double[] gradient = shape.gradient(x, b);
            for (int k = 0; k < b.length; k++) {
                double[] up = b.clone();
                double[] down = b.clone();
                up[k] += 1e-6;
                down[k] -= 1e-6;
                assertThat(gradient[k]).isCloseTo((shape.value(x, up) - shape.value(x, down)) / 2e-6, within(1e-7));
            }
        }
    }

    @Test
    void unusableCurveDataAreRefused() {
        double[] three = {1, 2, 3};
        assertThatIllegalArgumentException()
                .isThrownBy(
                        () -> LearningCurveFit.of(CurveShape.POWER, new double[] {0, 1, 2}, three, new double[] {1, 1}))
                .withMessageContaining("x above 0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LearningCurveFit.of(CurveShape.LOGISTIC3, three, three, new double[] {1, 1, 1}));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LearningCurveFit.of(CurveShape.POWER, three, three, new double[] {1, 1, 1}));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LearningCurveFit.of(
                        CurveShape.EXP_RISE, new double[] {0, 0, 0, 0}, new double[] {1, 2, 3, 4}, new double[] {1, 1}))
                .withMessageEndingWith(".");
    }

    @Test
    void theMonotoneFitIsMonotoneKeepsTheMeanAndIsItsOwnFit() {
        SplittableRandom random = new SplittableRandom(3);
        for (int trial = 0; trial < 100; trial++) {
            double[] y = random.doubles(25, 0, 10).toArray();
            double[] w = random.doubles(25, .1, 3).toArray();
            List<Double> fit = MonotoneFit.of(y, w);
            assertThat(fit).isSorted();
            assertThat(weightedSum(toArray(fit), w)).isCloseTo(weightedSum(y, w), within(1e-10));
            assertThat(MonotoneFit.of(toArray(fit), w)).isEqualTo(fit);
            double[] rival = random.doubles(25, 0, 10).sorted().toArray();
            assertThat(squares(y, toArray(fit), w)).isLessThanOrEqualTo(squares(y, rival, w));
        }
        assertThat(MonotoneFit.of(1, 2, 5)).containsExactly(1.0, 2.0, 5.0);
        assertThat(MonotoneFit.of(3, 2, 1)).containsExactly(2.0, 2.0, 2.0);
    }

    private static double[] toArray(List<Double> list) {
        return list.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static double weightedSum(double[] y, double[] w) {
        double sum = 0;
        for (int i = 0; i < y.length; i++) {
            sum += y[i] * w[i];
        }
        return sum;
    }

    private static double squares(double[] y, double[] fit, double[] w) {
        double sum = 0;
        for (int i = 0; i < y.length; i++) {
            sum += w[i] * (y[i] - fit[i]) * (y[i] - fit[i]);
        }
        return sum;
    }

    @ParameterizedTest
    @EnumSource(Quantile.class)
    void quantilesMoveWithTheScaleAndRiseWithTheProbability(Quantile type) {
        double[] x = new SplittableRandom(9).doubles(17, -5, 5).toArray();
        double[] moved = Arrays.stream(x).map(v -> 2 * v + 7).toArray();
        double[] mirrored = Arrays.stream(x).map(v -> -v).toArray();
        double last = Double.NEGATIVE_INFINITY;
        for (double p = 0; p <= 1; p += .0625) {
            double quantile = type.of(p, x);
            assertThat(quantile).isGreaterThanOrEqualTo(last);
            assertThat(type.of(p, moved)).isCloseTo(2 * quantile + 7, within(1e-12));
            assertThat(type.of(1 - p, mirrored)).isCloseTo(-quantile, within(1e-12));
            last = quantile;
        }
        assertThat(type.of(1, x)).isEqualTo(Arrays.stream(x).max().orElseThrow());
        assertThat(type.of(.3, 42)).isEqualTo(42);
        assertThatIllegalArgumentException().isThrownBy(() -> type.of(.5));
        assertThatIllegalArgumentException().isThrownBy(() -> type.of(1.01, x));
        assertThatIllegalArgumentException().isThrownBy(() -> type.of(.5, 1, Double.NaN));
    }
}
