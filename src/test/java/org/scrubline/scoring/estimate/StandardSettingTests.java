package org.scrubline.scoring.estimate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.scrubline.scoring.RandomTables.map;
import static org.scrubline.scoring.RandomTables.reversedRows;
import static org.scrubline.scoring.RandomTables.scores;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class StandardSettingTests {
    private static final double[] RATINGS = {1, 2, 2, 3, 3, 4, 5, 4};
    private static final double[] SCORES = {40, 52, 49, 61, 58, 70, 83, 74};

    @Test
    void theCutMovesWithTheScaleOfTheChecklist() {
        BorderlineRegression plain = BorderlineRegression.of(RATINGS, SCORES, 2, .95);
        BorderlineRegression scaled = BorderlineRegression.of(
                RATINGS, Arrays.stream(SCORES).map(s -> 3 * s + 100).toArray(), 2, .95);
        assertThat(scaled.cut()).isCloseTo(3 * plain.cut() + 100, within(1e-9));
        assertThat(scaled.standardError()).isCloseTo(3 * plain.standardError(), within(1e-9));
        assertThat(scaled.determination().orElseThrow())
                .isCloseTo(plain.determination().orElseThrow(), within(1e-12));
        assertThat(scaled.belowCut()).isEqualTo(plain.belowCut());
        assertThat(plain.groupMean()).hasValue(50.5);
    }

    @Test
    void aPerfectLineHasNoError() {
        BorderlineRegression line =
                BorderlineRegression.of(new double[] {1, 2, 3, 4}, new double[] {10, 20, 30, 40}, 2.5, .95);
        assertThat(line.cut()).isCloseTo(25, within(1e-12));
        assertThat(line.standardError()).isCloseTo(0, within(1e-12));
        assertThat(line.groupMean()).isEmpty();
        assertThat(line.groupMedian()).isEmpty();
        assertThat(line.belowCut()).isEqualTo(2);
    }

    @Test
    void aLineNeedsTwoDifferentRatings() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> BorderlineRegression.of(new double[] {2, 2, 2}, new double[] {1, 2, 3}, 2, .95))
                .withMessageContaining("All global ratings are equal");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> BorderlineRegression.of(new double[] {1, 2}, new double[] {1, 2}, 2, .95));
        assertThat(BorderlineRegression.of(new double[] {1, 2, 3}, new double[] {5, 5, 5}, 2, .95)
                        .determination())
                .isEmpty();
    }

    @Test
    void equalRatingsAreRefusedAlsoWhenTheirMeanIsRounded() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> BorderlineRegression.of(new double[] {.1, .1, .1}, new double[] {1, 2, 3}, .1, .95))
                .withMessageContaining("All global ratings are equal");
        assertThat(BorderlineRegression.of(new double[] {1, 2, 3}, new double[] {.1, .1, .1}, 2, .95)
                        .determination())
                .isEmpty();
    }

    @Test
    void theOrderOfJudgesDoesNotMoveThePanelsCut() {
        double[][] judgements = map(scores(4, 6, 8), x -> 1 / (1 + Math.exp(-x)));
        AngoffPanel plain = AngoffPanel.of(judgements, .95);
        AngoffPanel reversed = AngoffPanel.of(reversedRows(judgements), .95);
        assertThat(reversed.cut()).isCloseTo(plain.cut(), within(1e-12));
        assertThat(reversed.standardError()).isCloseTo(plain.standardError(), within(1e-12));
        assertThat(plain.interval().contains(plain.cut())).isTrue();
        assertThat(AngoffPanel.of(judgements, .5).interval().width())
                .isLessThan(plain.interval().width());
        assertThat(plain.percent()).isCloseTo(plain.cut() / 8 * 100, within(1e-12));
    }

    @Test
    void judgementsAreProbabilitiesOfAtLeastTwoJudges() {
        assertThatIllegalArgumentException().isThrownBy(() -> AngoffPanel.of(new double[][] {{.5, .5}}, .95));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> AngoffPanel.of(new double[][] {{.5}, {1.5}}, .95))
                .withMessageContaining("from 0 to 1");
        assertThat(AngoffPanel.of(new double[][] {{.5}, {.5}}, .95).interval()).isEqualTo(new Interval(.5, .5));
    }
}
