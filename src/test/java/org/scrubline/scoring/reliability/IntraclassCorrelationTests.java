package org.scrubline.scoring.reliability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.scrubline.scoring.RandomTables.levels;
import static org.scrubline.scoring.RandomTables.map;
import static org.scrubline.scoring.RandomTables.reversedColumns;
import static org.scrubline.scoring.RandomTables.reversedRows;
import static org.scrubline.scoring.RandomTables.scores;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.scoring.estimate.Interval;

class IntraclassCorrelationTests {

    private static List<IntraclassCorrelation.Form> forms(double[][] ratings, double confidence) {
        IntraclassCorrelation icc = IntraclassCorrelation.of(ratings, confidence);
        return List.of(
                icc.oneWaySingle(),
                icc.randomRatersSingle(),
                icc.fixedRatersSingle(),
                icc.oneWayMean(),
                icc.randomRatersMean(),
                icc.fixedRatersMean());
    }

    private static void assertSame(double[][] one, double[][] other) {
        List<IntraclassCorrelation.Form> first = forms(one, .95);
        List<IntraclassCorrelation.Form> second = forms(other, .95);
        for (int i = 0; i < first.size(); i++) {
            assertThat(second.get(i).value().orElseThrow())
                    .isCloseTo(first.get(i).value().orElseThrow(), within(1e-10));
            Interval a = first.get(i).interval().orElseThrow();
            Interval b = second.get(i).interval().orElseThrow();
            assertThat(b.low()).isCloseTo(a.low(), within(1e-9));
            assertThat(b.high()).isCloseTo(a.high(), within(1e-9));
        }
    }

    /** Shrout and Fleiss, Psychol Bull 1979;86:420, tables 2 to 4, two decimals. */
    @Test
    void thePublishedExampleGivesThePublishedSixForms() {
        double[][] ratings = {{9, 2, 5, 8}, {6, 1, 3, 2}, {8, 4, 6, 8}, {7, 1, 2, 6}, {10, 5, 6, 9}, {6, 2, 4, 7}};
        double[] printed = {.17, .29, .71, .44, .62, .91};
        List<IntraclassCorrelation.Form> forms = forms(ratings, .95);
        for (int i = 0; i < printed.length; i++) {
            assertThat(forms.get(i).value().orElseThrow()).isCloseTo(printed[i], within(.005));
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void theOrderOfSubjectsAndOfRatersDoesNotMatter(long seed) {
        double[][] ratings = scores(seed, 9, 4);
        assertSame(ratings, reversedRows(ratings));
        assertSame(ratings, reversedColumns(ratings));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void neitherTheOriginNorTheUnitOfTheScaleMatters(long seed) {
        double[][] ratings = levels(seed, 9, 3);
        assertSame(ratings, map(ratings, x -> 1e6 + x));
        assertSame(ratings, map(ratings, x -> 250 * x - 17));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void theMeanOfFixedRatersIsCronbachsAlpha(long seed) {
        double[][] ratings = levels(seed, 12, 5);
        assertThat(IntraclassCorrelation.of(ratings, .9)
                        .fixedRatersMean()
                        .value()
                        .orElseThrow())
                .isCloseTo(CronbachAlpha.of(ratings).alpha().orElseThrow(), within(1e-12));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void aStrictRaterLowersAgreementButNotConsistency(long seed) {
        double[][] ratings = scores(seed, 10, 3);
        double[][] strict = map(ratings, x -> x);
        for (double[] row : strict) {
            row[0] -= 6;
        }
        IntraclassCorrelation before = IntraclassCorrelation.of(ratings, .95);
        IntraclassCorrelation after = IntraclassCorrelation.of(strict, .95);
        assertThat(after.fixedRatersSingle().value().orElseThrow())
                .isCloseTo(before.fixedRatersSingle().value().orElseThrow(), within(1e-12));
        assertThat(after.randomRatersSingle().value().orElseThrow())
                .isLessThan(before.randomRatersSingle().value().orElseThrow());
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void intervalsNestWithTheConfidenceAroundTheValue(long seed) {
        double[][] ratings = scores(seed, 8, 3);
        List<IntraclassCorrelation.Form> narrow = forms(ratings, .8);
        List<IntraclassCorrelation.Form> wide = forms(ratings, .99);
        for (int i = 0; i < narrow.size(); i++) {
            Interval inner = narrow.get(i).interval().orElseThrow();
            Interval outer = wide.get(i).interval().orElseThrow();
            assertThat(inner.contains(narrow.get(i).value().orElseThrow())).isTrue();
            assertThat(outer.contains(inner.low()) && outer.contains(inner.high()))
                    .isTrue();
        }
    }

    @Test
    void equalRatingsHaveNoCorrelation() {
        assertThat(forms(new double[][] {{.1, .1}, {.1, .1}, {.1, .1}}, .95))
                .allMatch(form -> form.value().isEmpty() && form.interval().isEmpty());
    }

    @Test
    void ratersWhoDifferByAConstantAgreePerfectlyInOrder() {
        IntraclassCorrelation icc = IntraclassCorrelation.of(new double[][] {{.1, .3}, {.2, .4}, {.7, .9}}, .95);
        assertThat(icc.fixedRatersSingle().value()).hasValue(1);
        assertThat(icc.fixedRatersSingle().interval()).isEmpty();
        assertThat(icc.twoWayF()).isEmpty();
    }

    @Test
    void tooFewSubjectsOrRatersAndGapsAreRefused() {
        assertThatIllegalArgumentException().isThrownBy(() -> forms(new double[][] {{1, 2}}, .95));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> forms(new double[][] {{1}, {2}}, .95))
                .withMessageContaining("2 columns");
        assertThatIllegalArgumentException().isThrownBy(() -> forms(new double[][] {{1, 2}, {1}}, .95));
        assertThatIllegalArgumentException().isThrownBy(() -> forms(new double[][] {{1, 2}, {1, Double.NaN}}, .95));
    }
}
