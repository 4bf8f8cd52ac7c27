package org.scrubline.scoring.ordinal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class CumulativeLogitTests {
    private static final List<String> WINE_NAMES = List.of("warm", "contact");

    private record Wine(double[] y, double[][] x) {}

    private static Wine wine() throws IOException {
        try (InputStream in = CumulativeLogitTests.class.getResourceAsStream("/reference/clm-wine.json")) {
            JsonNode data = JsonMapper.shared().readTree(in).get("data");
            return new Wine(
                    data.get("y").valueStream().mapToDouble(JsonNode::asDouble).toArray(),
                    data.get("X")
                            .valueStream()
                            .map(row -> row.valueStream()
                                    .mapToDouble(JsonNode::asDouble)
                                    .toArray())
                            .toArray(double[][]::new));
        }
    }

    private static List<String> judges() {
        return IntStream.range(0, 72).mapToObj(i -> "judge " + i / 8).toList();
    }

    private static void assertRounds(Estimate estimate, double value, double standardError) {
        assertThat(estimate.value()).isCloseTo(value, within(5e-4));
        assertThat(estimate.standardError()).isCloseTo(standardError, within(5e-4));
    }

    /**
     * Bitterness of wine on temperature and contact with nine judges, each with eight ratings in a row: the example of
     * Christensen's tutorial on cumulative link mixed models with the R package ordinal, Laplace; figures from memory.
     */
    @Test
    void theWineExampleWithJudgesGivesThePublishedEstimates() throws IOException {
        OrdinalData data = new OrdinalData(wine().y(), wine().x(), WINE_NAMES);
        MixedCumulativeLogit fit = MixedCumulativeLogit.of(data, judges(), 1);
        assertThat(fit.logLikelihood()).isCloseTo(-81.57, within(.005));
        assertThat(fit.groupVariance()).isCloseTo(1.279, within(.001));
        assertRounds(fit.coefficients().get("warm"), 3.063, .5954);
        assertRounds(fit.coefficients().get("contact"), 1.8349, .5125);
        assertRounds(fit.thresholds().get(0), -1.6237, .6824);
        assertRounds(fit.thresholds().get(3), 6.0888, .9725);
    }

    @Test
    void doublingTheNodesMovesTheFitByNothing() throws IOException {
        OrdinalData data = new OrdinalData(wine().y(), wine().x(), WINE_NAMES);
        MixedCumulativeLogit ten = MixedCumulativeLogit.of(data, judges(), 10);
        MixedCumulativeLogit twenty = MixedCumulativeLogit.of(data, judges(), 20);
        assertThat(twenty.logLikelihood()).isCloseTo(ten.logLikelihood(), within(1e-5));
        assertThat(twenty.groupVariance()).isCloseTo(ten.groupVariance(), within(1e-4));
        assertThat(ten.logLikelihood())
                .isGreaterThan(CumulativeLogitFit.of(data).logLikelihood());
    }

    @Test
    void theOrderOfGroupsAndResponsesDoesNotMatter() throws IOException {
        Wine wine = wine();
        double[] y = new double[72];
        double[][] x = new double[72][];
        for (int i = 0; i < 72; i++) {
            y[i] = wine.y()[71 - i];
            x[i] = wine.x()[71 - i];
        }
        MixedCumulativeLogit plain =
                MixedCumulativeLogit.of(new OrdinalData(wine.y(), wine.x(), WINE_NAMES), judges(), 5);
        MixedCumulativeLogit reversed = MixedCumulativeLogit.of(new OrdinalData(y, x, WINE_NAMES), judges(), 5);
        assertThat(reversed.logLikelihood()).isCloseTo(plain.logLikelihood(), within(1e-8));
        assertThat(reversed.groupVariance()).isCloseTo(plain.groupVariance(), within(1e-4));
    }

    @Test
    void withoutCovariatesTheThresholdsAreThoseOfTheShares() {
        double[] y = {1, 1, 2, 2, 2, 3, 3, 3, 3, 3};
        CumulativeLogitFit fit = CumulativeLogitFit.of(new OrdinalData(y, new double[10][0], List.of()));
        assertThat(fit.thresholds().get(0).value()).isCloseTo(Math.log(.2 / .8), within(1e-9));
        assertThat(fit.thresholds().get(1).value()).isCloseTo(0, within(1e-9));
        assertThat(fit.logLikelihood()).isCloseTo(2 * Math.log(.2) + 3 * Math.log(.3) + 5 * Math.log(.5), within(1e-9));
        assertThat(fit.thresholds().get(1).standardError()).isCloseTo(Math.sqrt(1 / (10 * .25)), within(1e-9));
    }

    @Test
    void turningTheCategoriesRoundTurnsTheSigns() throws IOException {
        Wine wine = wine();
        CumulativeLogitFit plain = CumulativeLogitFit.of(new OrdinalData(wine.y(), wine.x(), WINE_NAMES));
        double[] turned = Arrays.stream(wine.y()).map(y -> 6 - y).toArray();
        CumulativeLogitFit mirrored = CumulativeLogitFit.of(new OrdinalData(turned, wine.x(), WINE_NAMES));
        assertThat(mirrored.logLikelihood()).isCloseTo(plain.logLikelihood(), within(1e-9));
        for (String name : WINE_NAMES) {
            assertThat(mirrored.coefficients().get(name).value())
                    .isCloseTo(-plain.coefficients().get(name).value(), within(1e-7));
        }
        assertThat(mirrored.thresholds().get(0).value())
                .isCloseTo(-plain.thresholds().get(3).value(), within(1e-7));
    }

    @Test
    void aWeightCountsAsSoManyResponses() {
        double[] y = {1, 2, 3, 1, 2, 3};
        double[][] x = {{0}, {0}, {0}, {1}, {1}, {1}};
        double[] weights = {5, 4, 2, 2, 4, 7};
        double[] long1 = new double[24];
        double[][] long2 = new double[24][];
        int next = 0;
        for (int i = 0; i < 6; i++) {
            for (int k = 0; k < weights[i]; k++) {
                long1[next] = y[i];
                long2[next++] = x[i];
            }
        }
        CumulativeLogitFit weighted = CumulativeLogitFit.of(new OrdinalData(y, x, List.of("late")), weights);
        CumulativeLogitFit repeated = CumulativeLogitFit.of(new OrdinalData(long1, long2, List.of("late")));
        assertThat(weighted.coefficients().get("late").value())
                .isCloseTo(repeated.coefficients().get("late").value(), within(1e-9));
        assertThat(weighted.coefficients().get("late").standardError())
                .isCloseTo(repeated.coefficients().get("late").standardError(), within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void simulatedCoefficientsAreFoundWithinTheirErrors(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int n = 3000;
        double[] y = new double[n];
        double[][] x = new double[n][];
        for (int i = 0; i < n; i++) {
            x[i] = new double[] {random.nextDouble(-1, 1), random.nextInt(2)};
            double u = random.nextDouble();
            double latent = 1.2 * x[i][0] - .7 * x[i][1] + Math.log(u / (1 - u));
            y[i] = latent < -1 ? 1 : latent < 1 ? 2 : 3;
        }
        CumulativeLogitFit fit = CumulativeLogitFit.of(new OrdinalData(y, x, List.of("a", "b")));
        assertWithinErrors(fit.coefficients().get("a"), 1.2);
        assertWithinErrors(fit.coefficients().get("b"), -.7);
        assertWithinErrors(fit.thresholds().get(0), -1);
        assertWithinErrors(fit.thresholds().get(1), 1);
    }

    private static void assertWithinErrors(Estimate estimate, double truth) {
        assertThat(estimate.value()).isCloseTo(truth, within(4 * estimate.standardError()));
        assertThat(estimate.standardError()).isLessThan(.15);
    }

    @Test
    void dataWithoutAMaximumAreRefused() {
        double[][] x = {{0}, {0}, {1}, {1}};
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CumulativeLogitFit.of(new OrdinalData(new double[] {1, 1, 2, 2}, x, List.of("late"))))
                .withMessageContaining("separate");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new OrdinalData(new double[] {2, 2, 2, 2}, x, List.of("late")))
                .withMessageContaining("one category");
        double[][] twice = {{0, 0}, {1, 1}, {0, 0}, {1, 1}};
        assertThatIllegalArgumentException()
                .isThrownBy(() ->
                        CumulativeLogitFit.of(new OrdinalData(new double[] {1, 1, 2, 2}, twice, List.of("a", "b"))))
                .withMessageContaining("no single maximum");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new OrdinalData(new double[] {1, 2, 1}, new double[][] {{1}, {1}, {1}}, List.of("a")))
                .withMessageContaining("same for every response");
        OrdinalData data = new OrdinalData(new double[] {1, 2, 1, 2}, x, List.of("late"));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> MixedCumulativeLogit.of(data, List.of("g", "g", "g", "g"), 1))
                .withMessageContaining("2 groups");
    }
}
