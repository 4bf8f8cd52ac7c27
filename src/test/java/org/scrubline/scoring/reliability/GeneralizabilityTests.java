package org.scrubline.scoring.reliability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.scrubline.scoring.RandomTables.levels;
import static org.scrubline.scoring.RandomTables.map;
import static org.scrubline.scoring.RandomTables.reversedColumns;
import static org.scrubline.scoring.RandomTables.reversedRows;
import static org.scrubline.scoring.RandomTables.scores;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class GeneralizabilityTests {

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void theCoefficientOfPersonsByItemsIsCronbachsAlpha(long seed) {
        double[][] scores = levels(seed, 12, 5);
        assertThat(PersonsByItems.of(scores).projected(5).generalizability().orElseThrow())
                .isCloseTo(CronbachAlpha.of(scores).alpha().orElseThrow(), within(1e-12));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void ownItemsAreTheOneWayIntraclassCorrelation(long seed) {
        double[][] scores = scores(seed, 12, 4);
        ItemsWithinPersons study = ItemsWithinPersons.of(scores);
        IntraclassCorrelation icc = IntraclassCorrelation.of(scores, .95);
        assertThat(study.projected(1).dependability().orElseThrow())
                .isCloseTo(icc.oneWaySingle().value().orElseThrow(), within(1e-12));
        assertThat(study.projected(4).generalizability().orElseThrow())
                .isCloseTo(icc.oneWayMean().value().orElseThrow(), within(1e-12));
    }

    @Test
    void moreObservationsNeverAddError() {
        PersonsByItems study = PersonsByItems.of(scores(5, 10, 4));
        for (int n = 1; n < 40; n++) {
            assertThat(study.projected(n + 1).absoluteError())
                    .isLessThan(study.projected(n).absoluteError());
            assertThat(study.projected(n).dependability().orElseThrow())
                    .isLessThanOrEqualTo(study.projected(n).generalizability().orElseThrow());
        }
    }

    @Test
    void projectionFollowsSpearmanAndBrown() {
        PersonsByItems study = PersonsByItems.of(levels(5, 10, 4));
        double one = study.projected(1).generalizability().orElseThrow();
        assertThat(study.projected(7).generalizability().orElseThrow())
                .isCloseTo(SpearmanBrown.projected(one, 7).orElseThrow(), within(1e-12));
        double target = study.projected(9).generalizability().orElseThrow();
        assertThat(SpearmanBrown.factorNeeded(one, target)).isCloseTo(9, within(1e-9));
    }

    @Test
    void aCutFarFromTheMeanIsEasyToDecide() {
        PersonsByItems study = PersonsByItems.of(scores(6, 10, 4));
        double near = study.phiLambda(study.mean()).orElseThrow();
        double far = study.phiLambda(study.mean() + 4).orElseThrow();
        assertThat(far).isGreaterThan(near).isLessThan(1);
        assertThat(near).isLessThan(study.projected(4).dependability().orElseThrow());
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2})
    void theOrderOfPersonsAndOfItemsDoesNotMatter(long seed) {
        double[][] scores = levels(seed, 8, 4);
        double plain = PersonsByItems.of(scores).itemVariance();
        assertThat(PersonsByItems.of(reversedRows(scores)).itemVariance()).isCloseTo(plain, within(1e-12));
        assertThat(PersonsByItems.of(reversedColumns(scores)).itemVariance()).isCloseTo(plain, within(1e-12));
        assertThat(PersonsByItems.of(map(scores, x -> 10 * x + 1e5)).itemVariance())
                .isCloseTo(100 * plain, within(1e-7));
    }

    @Test
    void threeFacetsWithEqualOccasionsReduceToTwo() {
        double[][] scores = scores(7, 8, 4);
        double[][][] repeated =
                Arrays.stream(scores).map(row -> new double[][] {row, row}).toArray(double[][][]::new);
        PersonsByItemsByOccasions study = PersonsByItemsByOccasions.of(repeated);
        PersonsByItems plain = PersonsByItems.of(scores);
        assertThat(study.variances().p()).isCloseTo(plain.personVariance(), within(1e-12));
        assertThat(study.variances().pi()).isCloseTo(plain.residualVariance(), within(1e-12));
        assertThat(study.variances().i()).isCloseTo(plain.itemVariance(), within(1e-12));
        assertThat(study.meanSquares().o()).isZero();
        assertThat(study.meanSquares().pio()).isZero();
    }

    @Test
    void fixingItemsMovesTheirInteractionIntoTheUniverseScore() {
        double[][][] scores = {scores(1, 3, 4), scores(2, 3, 4), scores(3, 3, 4), scores(4, 3, 4), scores(5, 3, 4)};
        PersonsByItemsByOccasions study = PersonsByItemsByOccasions.of(scores);
        Projection random = study.projected(4, 3);
        Projection fixed = study.projectedWithItemsFixed(4, 3);
        double interaction = study.variances().pi() / 4;
        assertThat(fixed.universeScore()).isCloseTo(random.universeScore() + interaction, within(1e-12));
        assertThat(fixed.relativeError()).isCloseTo(random.relativeError() - interaction, within(1e-12));
    }

    @Test
    void ratersWithinTasksNeedTheSameNumberInEachTask() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RatersWithinTasks.of(scores(1, 4, 5), 1, 1, 2, 2, 2))
                .withMessageContaining("same number of raters");
        assertThatIllegalArgumentException().isThrownBy(() -> RatersWithinTasks.of(scores(1, 4, 4), 1, 1, 1, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> RatersWithinTasks.of(scores(1, 4, 4), 1, 1, 2));
    }

    @Test
    void theOrderOfColumnsDoesNotMatterToRatersWithinTasks() {
        double[][] scores = scores(3, 6, 6);
        RatersWithinTasks plain = RatersWithinTasks.of(scores, 1, 1, 1, 2, 2, 2);
        RatersWithinTasks reversed = RatersWithinTasks.of(reversedColumns(scores), 7, 7, 7, 4, 4, 4);
        assertThat(reversed.variances().ph()).isCloseTo(plain.variances().ph(), within(1e-12));
        assertThat(reversed.variances().h()).isCloseTo(plain.variances().h(), within(1e-12));
        assertThat(reversed.terms().pih()).isCloseTo(plain.terms().pih(), within(1e-9));
    }

    @Test
    void equalScoresHaveNoCoefficient() {
        double[][] equal = {{.3, .3}, {.3, .3}};
        assertThat(PersonsByItems.of(equal).projected(2).generalizability()).isEmpty();
        assertThat(ItemsWithinPersons.of(equal).projected(2).dependability()).isEmpty();
        assertThat(CronbachAlpha.of(equal).alpha()).isEmpty();
        assertThat(CronbachAlpha.of(equal).standardised()).isEmpty();
        assertThat(CronbachAlpha.of(equal).itemRestCorrelation(0)).isEmpty();
        assertThat(PersonsByItems.of(equal).phiLambda(.3)).isEmpty();
    }

    @Test
    void sumsThatDoNotVaryHaveNoReliabilityThoughTheirItemsVary() {
        double[][] oneEach = {{0, 0, 1}, {0, 1, 0}, {1, 0, 0}, {1, 0, 0}, {1, 0, 0}};
        assertThat(CronbachAlpha.of(oneEach).alpha()).isEmpty();
        assertThat(CronbachAlpha.of(oneEach).kr21()).isEmpty();
        double[][] unlike = {{0, 0, 1}, {0, 1, 1}, {1, 1, 1}, {0, 0, 0}};
        assertThat(CronbachAlpha.of(unlike).kr21()).isPresent();
    }

    @Test
    void onlyAnItemOfTheTableCanBeLeftOut() {
        CronbachAlpha alpha = CronbachAlpha.of(levels(7, 6, 4));
        assertThat(alpha.alphaWithout(3)).isPresent();
        assertThatExceptionOfType(IndexOutOfBoundsException.class).isThrownBy(() -> alpha.alphaWithout(4));
        assertThatExceptionOfType(IndexOutOfBoundsException.class).isThrownBy(() -> alpha.alphaWithout(-1));
        assertThatExceptionOfType(IndexOutOfBoundsException.class).isThrownBy(() -> alpha.itemRestCorrelation(4));
    }

    @Test
    void twoParallelTestsAgreeAtLeastHalfOfTheTime() {
        double[][] scores = map(scores(11, 30, 10), x -> x > 0 ? 1 : 0);
        for (int cut = 1; cut <= 10; cut++) {
            assertThat(DecisionConsistency.huynh(scores, cut).agreement()).isBetween(.5, 1.0);
            assertThat(DecisionConsistency.subkoviak(scores, cut).agreement()).isBetween(.5, 1.0);
        }
        assertThatIllegalArgumentException().isThrownBy(() -> DecisionConsistency.huynh(scores, 0));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> DecisionConsistency.subkoviak(levels(1, 5, 5), 2))
                .withMessageContaining("0 and 1");
    }

    @Test
    void prophecyRefusesWhatHasNoMeaning() {
        assertThat(SpearmanBrown.projected(-1, 2)).isEmpty();
        assertThatIllegalArgumentException().isThrownBy(() -> SpearmanBrown.projected(1.2, 2));
        assertThatIllegalArgumentException().isThrownBy(() -> SpearmanBrown.projected(.5, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> SpearmanBrown.factorNeeded(.5, 1));
    }
}
