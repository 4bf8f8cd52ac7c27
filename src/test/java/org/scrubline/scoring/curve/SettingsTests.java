package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Set;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a programme may set and what is refused, at the edges. */
class SettingsTests {

    private static void refused(ThrowingCallable setting, String part) {
        assertThatIllegalArgumentException().isThrownBy(setting).withMessageContaining(part);
    }

    private static ProcedureStandard standard(int curveLevel, double stepChance, double assurance, int level) {
        return new ProcedureStandard(
                List.of("A"),
                curveLevel,
                stepChance,
                assurance,
                List.of(new LevelStandard("E", level, 0.5)),
                ProcedureStandard.Minimums.USUAL,
                Set.of());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1, -.1, Double.NaN})
    void wantedChancesLieStrictlyBetweenNothingAndCertainty(double chance) {
        refused(() -> standard(4, chance, .8, 4), "must lie between 0 and 1");
        refused(() -> standard(4, .8, chance, 4), "must lie between 0 and 1");
        refused(() -> new LevelStandard("E2", 3, chance), "standard E2 needs a level above 1 and a chance between");
        assertThatCode(() -> standard(4, .001, .999, 4)).doesNotThrowAnyException();
    }

    @Test
    void aStandardStartsAtTheSecondLevel() {
        refused(() -> new LevelStandard("E2", 1, .5), "has 1 and 0.5");
        assertThat(new LevelStandard("E2", 2, .5).level()).isEqualTo(2);
    }

    @ParameterizedTest
    @CsvSource({"1, 3, false", "2, 3, true", "5, 5, true", "6, 3, false", "4, 6, false"})
    void aStandardMustLieOnTheScale(int curveLevel, int level, boolean fits) {
        ScoreTable table = ScoreTable.of(
                5,
                List.of("A"),
                List.of(new ObservedScore("a", "t", "v", new CaseContext("c", 0, 0, 0, List.of()), "A", 3)));
        PopulationFit fit =
                new CompetencyModel(ModelSettings.standard(5)).fit(table, Psi.shipped(5, 1, 0), Estimation.GIVEN);
        ThrowingCallable smooth = () -> CompetencyModel.smooth(fit, table, "t", standard(curveLevel, .8, .8, level));
        if (fits) {
            assertThatCode(smooth).doesNotThrowAnyException();
        } else {
            refused(smooth, "the standards ask for a level the 5-level scale lacks");
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, 1e6, Double.NaN})
    void thePaceOfTheGainIsANumberAboveNothing(double kappa) {
        refused(() -> new ModelSettings(Terms.FULL, kappa, true, true, PsiPriors.none()), "kappa must be above 0");
        assertThatCode(() -> new ModelSettings(Terms.FULL, 1e-3, true, true, PsiPriors.none()))
                .doesNotThrowAnyException();
    }

    @Test
    void aPriorNeedsAMeanAndASpread() {
        refused(() -> new PsiPriors.Normal(List.of(), List.of(1.0)), "a prior needs a mean");
        refused(() -> new PsiPriors.Normal(List.of(0.0), List.of()), "a prior needs a mean");
        refused(() -> new PsiPriors.Normal(List.of(0.0), List.of(0.0)), "a standard deviation above 0");
        PsiPriors.Normal two = new PsiPriors.Normal(List.of(1.0, 2.0), List.of(0.5));
        assertThat(two.mean(0)).isEqualTo(1);
        assertThat(two.mean(1)).isEqualTo(2);
        assertThat(two.mean(7)).isEqualTo(2);
        assertThat(two.sd(3)).isEqualTo(0.5);
    }

    @Test
    void thresholdsRiseAndSpreadsAreNotNegative() {
        Psi shipped = Psi.shipped(5, 2, 1);
        refused(() -> psi(List.of(0.0, 0.0), 1), "thresholds must rise, but are [0.0, 0.0]");
        refused(() -> psi(List.of(0.0, -1.0), 1), "thresholds must rise");
        refused(() -> psi(List.of(0.0, 1.0), -1e-9), "must be 0 or more");
        refused(() -> psi(List.of(0.0, 1.0), 1000), "must be 0 or more");
        refused(() -> psi(List.of(0.0, 1.0), Double.NaN), "must be 0 or more");
        assertThat(psi(List.of(0.0, 1.0), 0).levelSd()).isZero();
        assertThat(shipped.levels()).isEqualTo(5);
        assertThat(shipped.threshold(2)).isEqualTo(-1.915849);
        assertThat(shipped.threshold(5)).isEqualTo(3.138172);
    }

    private static Psi psi(List<Double> thresholds, double spread) {
        return new Psi(thresholds, List.of(), List.of(), 1, 0, spread, 1, 1, 1, 1, 1, 0, 0, List.of(), List.of());
    }

    /** Thresholds of other scales: middles of equal parts of the five-level range from -1.915849 to 3.138172. */
    @Test
    void otherNumbersOfLevelsShareTheRangeEvenly() {
        assertThat(Psi.shippedThresholds(2).get(0)).isCloseTo((3.138172 - 1.915849) / 2, within(1e-12));
        List<Double> four = Psi.shippedThresholds(4);
        double third = (3.138172 + 1.915849) / 3;
        assertThat(four).hasSize(3);
        assertThat(four.get(0)).isCloseTo(-1.915849 + third / 2, within(1e-12));
        assertThat(four.get(2) - four.get(1)).isCloseTo(third, within(1e-12));
        assertThat(Psi.shipped(5, 2, 4).complexity()).containsExactly(0.6145, 0.4208, 0.4940, 0.4);
    }

    @Test
    void aSupervisorsHabitsAreCopiedToTheLaterHalfOnly() {
        Psi psi = new Psi(
                List.of(0.0),
                List.of(),
                List.of(),
                1,
                0,
                1,
                1,
                1,
                1,
                1,
                1,
                0,
                0,
                List.of(0.1, 0.2, 0.0),
                List.of(0.3, 0.4, 0.0));
        Psi copied = psi.withHabitsOf(1, 2);
        assertThat(copied.range()).containsExactly(0.1, 0.2, 0.2);
        assertThat(copied.halo()).containsExactly(0.3, 0.4, 0.4);
        assertThat(psi.withHabitsOf(1, 3).range()).containsExactly(0.1, 0.2, 0.0);
    }

    /** What is left out of the model is 0, the rest as it was. */
    @Test
    void termsLeftOutAreNothing() {
        Psi full = Psi.shipped(5, 2, 1);
        Psi none = full.restrictedTo(new Terms(false, false, false, false, false, false));
        assertThat(List.of(
                        none.gain(),
                        none.gainSd(),
                        none.gapLoss(),
                        none.stepSd(),
                        none.assessmentSd(),
                        none.pairSd(),
                        none.walk(),
                        none.gapWalk()))
                .containsOnly(0.0);
        assertThat(none.levelSd()).isEqualTo(full.levelSd());
        assertThat(none.severitySd()).isEqualTo(full.severitySd());
        assertThat(full.restrictedTo(Terms.FULL)).isEqualTo(full);
        assertThat(full.restrictedTo(new Terms(true, true, false, true, true, true))
                        .gapWalk())
                .isZero();
        assertThat(full.restrictedTo(new Terms(true, false, true, true, true, true))
                        .gapWalk())
                .isZero();
        assertThat(new Terms(false, false, false, true, true, true).isStatic()).isTrue();
        assertThat(new Terms(false, false, true, true, true, true).isStatic()).isFalse();
        assertThat(new Terms(false, true, false, true, true, true).isStatic()).isFalse();
        assertThat(new Terms(true, false, false, true, true, true).isStatic()).isFalse();
    }

    @Test
    void aCaseNeedsUsableNumbers() {
        refused(() -> new CaseContext("c", 0, -1, 0, List.of()), "case c: experience must be 0 or more, but is -1");
        refused(() -> new CaseContext("c", 0, 1e6, 0, List.of()), "experience");
        refused(() -> new CaseContext("c", 0, 0, -.1, List.of()), "case c: gap must be 0..120 months, but is -0.1");
        refused(() -> new CaseContext("c", 0, 0, 120.1, List.of()), "gap must be 0..120");
        refused(() -> new CaseContext("c", 0, 0, 0, List.of(100.1)), "complexity 100.1 is not a usable number");
        refused(() -> new CaseContext("c", 0, 0, 0, List.of(Double.NaN)), "complexity NaN");
        assertThatCode(() -> new CaseContext("c", 0, 0, 120, List.of(-100.0, 100.0)))
                .doesNotThrowAnyException();
    }

    @Test
    void aScoreRunsUpwardsFromOne() {
        CaseContext context = new CaseContext("c", 0, 0, 0, List.of());
        refused(() -> new ObservedScore("a", "t", "v", context, "s", 3, 2), "must run upwards from 1, but are 3..2");
        assertThat(new ObservedScore("a", "t", "v", context, "s", 1, 1).highest())
                .isEqualTo(1);
    }
}
