package org.scrubline.scoring.reliability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.scrubline.scoring.reliability.SameWork.Difference;
import org.scrubline.scoring.reliability.SameWork.Rating;

class SameWorkTests {

    /** Columns are units, 0 is missing; as in src/test/resources/reference/krippendorff-alpha-12units.json. */
    private static final int[][] FOUR_OBSERVERS = {
        {1, 2, 3, 3, 2, 1, 4, 1, 2, 0, 0, 0},
        {1, 2, 3, 3, 2, 2, 4, 1, 2, 5, 0, 3},
        {0, 3, 3, 3, 2, 3, 4, 2, 2, 5, 1, 0},
        {1, 2, 3, 3, 2, 4, 4, 1, 2, 5, 1, 0}
    };

    private static List<Rating> ratings(int[]... scorers) {
        List<Rating> ratings = new ArrayList<>();
        for (int s = 0; s < scorers.length; s++) {
            for (int unit = 0; unit < scorers[s].length; unit++) {
                if (scorers[s][unit] > 0) {
                    ratings.add(new Rating("scorer " + s, "film " + unit % 4, "step " + unit / 4, scorers[s][unit]));
                }
            }
        }
        return ratings;
    }

    private static int[] levels(int units, int level) {
        int[] levels = new int[units];
        Arrays.fill(levels, level);
        return levels;
    }

    /** Every unit at 3 but a few, so that levels differ. */
    private static int[] varied(int units, int more) {
        int[] levels = levels(units, 3 + more);
        for (int unit = 0; unit < units; unit += 5) {
            levels[unit]--;
        }
        return levels;
    }

    /** Krippendorff, Computing Krippendorff's alpha-reliability, 2011: ordinal alpha .815; recomputed with irr 0.84.1. */
    @Test
    void alphaIsThePublishedOneForOrderedValues() {
        SameWork same = new SameWork(ratings(FOUR_OBSERVERS));
        assertThat(same.alphaOfAny().orElseThrow()).isCloseTo(.8153875037548813, within(1e-8));
        assertThat(same.units()).as("one unit has one rating only").isEqualTo(11);
        assertThat(same.scorers()).isEqualTo(4);
    }

    @Test
    void theSameRatingsInAnotherOrderGiveTheSame() {
        List<Rating> shuffled = new ArrayList<>(ratings(FOUR_OBSERVERS));
        Collections.shuffle(shuffled, new Random(7));
        assertThat(new SameWork(shuffled).alphaOfAny()).isEqualTo(new SameWork(ratings(FOUR_OBSERVERS)).alphaOfAny());
    }

    @Test
    void pairsAreCountedOneByOne() {
        int[] first = levels(20, 3);
        int[] second = levels(20, 3);
        int[] third = levels(20, 4);
        third[0] = 5;
        third[1] = 0;
        SameWork same = new SameWork(ratings(first, second, third));
        assertThat(same.pairs()).isEqualTo(19 * 3 + 1);
        assertThat(same.share(0).orElseThrow()).isCloseTo(20 / 58., within(1e-12));
        assertThat(same.share(1).orElseThrow()).isCloseTo(56 / 58., within(1e-12));
    }

    @Test
    void nothingIsGivenBelowThreeScorersOrTwentyUnits() {
        SameWork two = new SameWork(ratings(varied(30, 0), varied(30, 1)));
        SameWork nineteen = new SameWork(ratings(varied(19, 0), varied(19, 0), varied(19, 1), varied(19, 0)));
        SameWork enough = new SameWork(ratings(varied(20, 0), varied(20, 0), varied(20, 1), varied(20, 0)));
        for (SameWork few : List.of(two, nineteen, new SameWork(List.of()))) {
            assertThat(few.enough()).isFalse();
            assertThat(few.alpha()).isEmpty();
            assertThat(few.share(1)).isEmpty();
            assertThat(few.difference("scorer 1")).isNull();
            assertThat(few.bySteps("scorer 1")).isEmpty();
        }
        assertThat(enough.enough()).isTrue();
        assertThat(enough.alpha()).isPresent();
        assertThat(enough.difference("scorer 2")).isNotNull();
    }

    @Test
    void aScorerIsComparedWithTheMedianOfTheOthers() {
        SameWork same = new SameWork(ratings(levels(20, 2), levels(20, 3), levels(20, 4), levels(20, 5)));
        assertThat(same.difference("scorer 0")).isEqualTo(new Difference(20, 2, 4));
        assertThat(same.difference("scorer 1")).isEqualTo(new Difference(20, 3, 4));
        assertThat(same.difference("scorer 3")).extracting(Difference::mean).isEqualTo(2.);
        assertThat(same.bySteps("scorer 3"))
                .hasSize(5)
                .allSatisfy((step, one) -> assertThat(one).isEqualTo(new Difference(4, 5, 3)));
    }

    @Test
    void theMedianOfAnEvenNumberIsBetweenTheMiddleTwo() {
        SameWork same =
                new SameWork(ratings(levels(20, 4), levels(20, 1), levels(20, 2), levels(20, 3), levels(20, 5)));
        assertThat(same.difference("scorer 0")).isEqualTo(new Difference(20, 4, 2.5));
    }

    @Test
    void withFewerThanThreeOthersNobodyIsComparedThoughAgreementIsGiven() {
        SameWork same = new SameWork(ratings(varied(20, 0), varied(20, 1), varied(20, 0)));
        assertThat(same.alpha()).isPresent();
        assertThat(same.compared("scorer 0")).isZero();
        assertThat(same.difference("scorer 0")).isNull();
    }

    @Test
    void whoScoredTooFewOfTheUnitsIsNotComparedAndTheOthersAre() {
        int[] few = levels(25, 3);
        for (int unit = 0; unit < 6; unit++) {
            few[unit] = 0;
        }
        SameWork same = new SameWork(ratings(levels(25, 2), levels(25, 3), levels(25, 4), levels(25, 4), few));
        assertThat(same.compared("scorer 4")).isEqualTo(19);
        assertThat(same.difference("scorer 4")).isNull();
        assertThat(same.difference("scorer 0")).isNotNull();
        assertThat(same.compared("nobody")).isZero();
    }

    @Test
    void equalLevelsEverywhereHaveNoAlpha() {
        SameWork same = new SameWork(ratings(levels(20, 3), levels(20, 3), levels(20, 3)));
        assertThat(same.alpha()).isEmpty();
        assertThat(same.share(0).orElseThrow()).isEqualTo(1);
    }

    @Test
    void oneStepOfOneWorkHasOneLevelAScorer() {
        Rating one = new Rating("a", "film", "step", 3);
        assertThatIllegalArgumentException().isThrownBy(() -> new SameWork(List.of(one, one)));
    }
}
