package org.scrubline.scoring.reliability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.scrubline.scoring.RandomTables.levels;
import static org.scrubline.scoring.RandomTables.map;
import static org.scrubline.scoring.RandomTables.reversedColumns;
import static org.scrubline.scoring.RandomTables.reversedRows;
import static org.scrubline.scoring.RandomTables.transposed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.scoring.reliability.KrippendorffAlpha.Metric;

class AgreementTests {

    /** Two raters' levels 1 to 5 as a table of joint counts. */
    private static double[][] table(double[][] ratings) {
        double[][] table = new double[5][5];
        for (double[] row : ratings) {
            table[(int) row[0] - 1][(int) row[1] - 1]++;
        }
        return table;
    }

    private static List<List<String>> labels(double[][] ratings) {
        return Arrays.stream(ratings)
                .map(row -> Arrays.stream(row)
                        .mapToObj(x -> Integer.toString((int) x))
                        .toList())
                .toList();
    }

    private static List<List<@Nullable Double>> byRater(double[][] ratings) {
        List<List<@Nullable Double>> raters = new ArrayList<>();
        for (double[] rater : transposed(ratings)) {
            raters.add(new ArrayList<>(Arrays.stream(rater).boxed().toList()));
        }
        return raters;
    }

    private static double kappa(double[][] table, Weights weights) {
        return new KappaTable(table, 60).kappa(weights).kappa().orElseThrow();
    }

    /** Gwet, Br J Math Stat Psychol 2008;61:29 discusses this table of 125 subjects; printed AC1 .9408, from memory. */
    @Test
    void gwetsCoefficientStaysHighWhereKappaCollapses() {
        KappaTable table = new KappaTable(new double[][] {{118, 5}, {2, 0}}, 125);
        assertThat(table.gwetAc1().orElseThrow()).isCloseTo(.9408, within(5e-5));
        assertThat(table.kappa(Weights.UNWEIGHTED).kappa().orElseThrow()).isCloseTo(-.0234, within(5e-5));
        assertThat(table.brennanPrediger().orElseThrow()).isCloseTo(2 * 118 / 125.0 - 1, within(1e-12));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void exchangingTheRatersOrTheOrderOfCategoriesChangesNothing(long seed) {
        double[][] table = table(levels(seed, 60, 2));
        double[][] mirrored = reversedRows(reversedColumns(table));
        for (Weights weights : List.of(Weights.UNWEIGHTED, Weights.LINEAR, Weights.QUADRATIC)) {
            assertThat(kappa(transposed(table), weights)).isCloseTo(kappa(table, weights), within(1e-12));
            assertThat(kappa(mirrored, weights)).isCloseTo(kappa(table, weights), within(1e-12));
        }
    }

    @Test
    void agreementIsOneOnTheDiagonalAndZeroForIndependentRaters() {
        double[][] diagonal = {{5, 0, 0}, {0, 9, 0}, {0, 0, 2}};
        double[][] independent = {{2, 4, 6}, {1, 2, 3}, {3, 6, 9}};
        for (Weights weights : List.of(Weights.UNWEIGHTED, Weights.LINEAR, Weights.QUADRATIC)) {
            assertThat(kappa(diagonal, weights)).isEqualTo(1);
            assertThat(kappa(independent, weights)).isCloseTo(0, within(1e-12));
        }
    }

    @Test
    void customWeightsReproduceTheNamedOnes() {
        double[][] table = table(levels(4, 60, 2));
        double[][] distances = new double[5][5];
        double[][] agreement = new double[5][5];
        for (int i = 0; i < 5; i++) {
            for (int j = 0; j < 5; j++) {
                distances[i][j] = 7.0 * Math.abs(i - j);
                agreement[i][j] = 1 - (i - j) * (i - j) / 16.0;
            }
        }
        assertThat(kappa(table, Weights.disagreement(distances)))
                .isCloseTo(kappa(table, Weights.LINEAR), within(1e-12));
        assertThat(kappa(table, Weights.agreement(agreement)))
                .isCloseTo(kappa(table, Weights.QUADRATIC), within(1e-12));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> kappa(new double[][] {{1, 2}, {3, 4}}, Weights.agreement(agreement)))
                .withMessageContaining("made for 5 categories");
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void krippendorffAndFleissOfTwoRatersAreFormsOfScottsPi(long seed) {
        double[][] ratings = levels(seed, 60, 2);
        KappaTable table = new KappaTable(table(ratings), 60);
        assertThat(FleissKappa.ofRatings(labels(ratings)).kappa().orElseThrow())
                .isCloseTo(table.scottPi().orElseThrow(), within(1e-12));
        assertThat(new KrippendorffAlpha(byRater(ratings)).alpha(Metric.NOMINAL).orElseThrow())
                .isCloseTo(table.krippendorffNominal().orElseThrow(), within(1e-12));
        assertThat(FleissKappa.ofRatings(labels(ratings)).conger().orElseThrow())
                .as("Conger's kappa of two raters is Cohen's")
                .isCloseTo(table.kappa(Weights.UNWEIGHTED).kappa().orElseThrow(), within(1e-12));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void fleissSeesOnlyCountsWhoeverRated(long seed) {
        double[][] ratings = levels(seed, 25, 4);
        FleissKappa plain = FleissKappa.ofRatings(labels(ratings));
        int[][] counts = new int[25][5];
        for (int s = 0; s < 25; s++) {
            for (double rating : ratings[s]) {
                counts[s][(int) rating - 1]++;
            }
        }
        FleissKappa counted = FleissKappa.ofCounts(counts, List.of("1", "2", "3", "4", "5"));
        assertThat(counted.kappa().orElseThrow()).isCloseTo(plain.kappa().orElseThrow(), within(1e-12));
        assertThat(counted.z().orElseThrow()).isCloseTo(plain.z().orElseThrow(), within(1e-9));
        assertThat(counted.conger()).isEmpty();
        assertThat(FleissKappa.ofRatings(labels(reversedColumns(ratings)))
                        .kappa()
                        .orElseThrow())
                .isCloseTo(plain.kappa().orElseThrow(), within(1e-12));
    }

    @Test
    void oneCategoryLeavesNothingToCorrectForChance() {
        assertThat(FleissKappa.ofCounts(new int[][] {{3, 0}, {3, 0}}, List.of("a", "b"))
                        .kappa())
                .isEmpty();
        KappaTable table = new KappaTable(new double[][] {{8, 0}, {0, 0}}, 8);
        assertThat(table.kappa(Weights.UNWEIGHTED).kappa()).isEmpty();
        assertThat(table.scottPi()).isEmpty();
        assertThat(new KrippendorffAlpha(List.of(List.of(2.0, 2.0), List.of(2.0, 2.0))).alpha(Metric.INTERVAL))
                .isEmpty();
        assertThat(KendallConcordance.of(new double[][] {{1, 1}, {1, 1}}).w()).isEmpty();
    }

    @ParameterizedTest
    @EnumSource(Metric.class)
    void theOrderOfRatersAndUnitsDoesNotMatterToKrippendorff(Metric metric) {
        double[][] ratings = levels(8, 15, 4);
        double plain = new KrippendorffAlpha(byRater(ratings)).alpha(metric).orElseThrow();
        assertThat(new KrippendorffAlpha(byRater(reversedColumns(ratings)))
                        .alpha(metric)
                        .orElseThrow())
                .isCloseTo(plain, within(1e-12));
        assertThat(new KrippendorffAlpha(byRater(reversedRows(ratings)))
                        .alpha(metric)
                        .orElseThrow())
                .isCloseTo(plain, within(1e-12));
    }

    @Test
    void eachMetricIgnoresTheChangesOfScaleItShould() {
        double[][] ratings = levels(9, 15, 3);
        assertThat(alpha(map(ratings, x -> x * x), Metric.ORDINAL))
                .isCloseTo(alpha(ratings, Metric.ORDINAL), within(1e-12));
        assertThat(alpha(map(ratings, x -> 3 * x - 40), Metric.INTERVAL))
                .isCloseTo(alpha(ratings, Metric.INTERVAL), within(1e-12));
        assertThat(alpha(map(ratings, x -> 3 * x), Metric.RATIO))
                .isCloseTo(alpha(ratings, Metric.RATIO), within(1e-12));
        assertThat(alpha(map(ratings, x -> (7 * x) % 11), Metric.NOMINAL))
                .isCloseTo(alpha(ratings, Metric.NOMINAL), within(1e-12));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> alpha(map(ratings, x -> -x), Metric.RATIO))
                .withMessageContaining("ratio metric");
    }

    private static double alpha(double[][] ratings, Metric metric) {
        return new KrippendorffAlpha(byRater(ratings)).alpha(metric).orElseThrow();
    }

    @Test
    void aUnitWithOneRatingDropsOut() {
        List<List<@Nullable Double>> raters = byRater(levels(10, 8, 2));
        double plain = new KrippendorffAlpha(raters).alpha(Metric.ORDINAL).orElseThrow();
        raters.get(0).add(5.0);
        raters.get(1).add(null);
        assertThat(new KrippendorffAlpha(raters).alpha(Metric.ORDINAL)).hasValue(plain);
        assertThat(new KrippendorffAlpha(raters).pairableValues()).isEqualTo(16);
    }

    @Test
    void ratersWhoRankAlikeAreInFullConcordance() {
        double[][] ratings = {{1, 10, 5}, {2, 20, 6}, {3, 25, 7}, {9, 99, 8}};
        KendallConcordance concordance = KendallConcordance.of(ratings);
        assertThat(concordance.w().orElseThrow()).isCloseTo(1, within(1e-12));
        assertThat(concordance.chiSquared().orElseThrow()).isCloseTo(9, within(1e-12));
        double[][] levels = levels(3, 9, 4);
        assertThat(KendallConcordance.of(map(levels, Math::exp)).w())
                .isEqualTo(KendallConcordance.of(levels).w());
    }

    @Test
    void unusableTablesAreRefusedWithASentence() {
        assertThatIllegalArgumentException().isThrownBy(() -> new KappaTable(new double[][] {{1, 2}}, 3));
        assertThatIllegalArgumentException().isThrownBy(() -> new KappaTable(new double[][] {{1, -2}, {1, 1}}, 3));
        assertThatIllegalArgumentException().isThrownBy(() -> new KappaTable(new double[][] {{0, 0}, {0, 0}}, 3));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> FleissKappa.ofCounts(new int[][] {{2, 1}, {2, 2}}, List.of("a", "b")))
                .withMessageContaining("subject 2 has 4");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new KrippendorffAlpha(List.of(List.of(1.0))))
                .withMessageContaining("2 raters");
        assertThatIllegalArgumentException().isThrownBy(() -> Metric.named("fuzzy"));
    }
}
