package org.scrubline.people;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.scrubline.people.ExposurePlan.Done;

/** Months of training and what is planned for them. The rule is this project's own, without an outside source. */
class TrainingTimeTests {

    private static final String FAMILY = "NEEDLING";
    private static final ExposurePlan TWO_A_MONTH =
            new ExposurePlan(Map.of(FAMILY, List.of(2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2)));
    private static final TrainingTime YEAR = time(placement("2026-01-15", "2027-01-14", 100, null));

    private static Placement placement(String first, String last, int share, @Nullable String ended) {
        return new Placement(
                UUID.randomUUID(),
                UUID.randomUUID(),
                UUID.randomUUID(),
                LocalDate.parse(first),
                LocalDate.parse(last),
                share,
                ended == null ? null : LocalDate.parse(ended));
    }

    private static TrainingTime time(Placement... placements) {
        return new TrainingTime(List.of(placements));
    }

    @Test
    void aTrainingMonthIsOverOnTheDayTheNextOneBegins() {
        assertThat(YEAR.monthsOver(LocalDate.parse("2026-03-14"))).isEqualTo(1);
        assertThat(YEAR.monthsOver(LocalDate.parse("2026-03-15"))).isEqualTo(2);
        assertThat(YEAR.monthsOver(LocalDate.parse("2025-03-15")))
                .as("before the first day")
                .isZero();
        assertThat(time().monthsOver(LocalDate.parse("2026-03-15")))
                .as("never placed")
                .isZero();
    }

    @Test
    void theShareOfAMonthIsThatOfItsDays() {
        TrainingTime half =
                time(placement("2026-04-01", "2026-04-15", 60, null), placement("2026-04-16", "2026-12-31", 100, null));
        assertThat(half.share(1)).isCloseTo((15 * .6 + 15) / 30, within(1e-12));
        assertThat(half.share(2)).isEqualTo(1);
        assertThat(half.share(12)).as("after the last day").isZero();
    }

    @Test
    void daysBetweenTwoPlacementsAreAGapAndPlacementsSideBySideHaveNone() {
        TrainingTime broken = time(
                placement("2026-01-01", "2026-06-30", 100, "2026-03-31"),
                placement("2026-05-01", "2026-06-30", 100, null),
                placement("2026-07-01", "2026-12-31", 100, null));
        assertThat(broken.gaps()).singleElement().satisfies(gap -> {
            assertThat(gap.first()).isEqualTo("2026-04-01");
            assertThat(gap.last()).isEqualTo("2026-04-30");
            assertThat(gap.days()).isEqualTo(30);
        });
        assertThat(broken.share(4)).as("April").isZero();
    }

    @Test
    void aPlacementThatNeverBeganCountsForNothing() {
        TrainingTime time = time(
                placement("2026-01-01", "2026-06-30", 100, "2025-12-31"),
                placement("2026-02-01", "2026-06-30", 100, null));
        assertThat(time.first()).contains(LocalDate.parse("2026-02-01"));
        assertThat(time.gaps()).isEmpty();
    }

    @Test
    void aShareOfFullTimeScalesThePlan() {
        TrainingTime threeFifths = time(placement("2026-01-01", "2027-12-31", 60, null));
        assertThat(TWO_A_MONTH.planned(FAMILY, threeFifths, 5)).isCloseTo(6, within(1e-9));
        assertThat(TWO_A_MONTH.planned(FAMILY, threeFifths, 13))
                .as("the second year begins the plan again")
                .isCloseTo(15.6, within(1e-9));
        assertThat(TWO_A_MONTH.planned("GEL_STENT", threeFifths, 5)).isZero();
    }

    @Test
    void oneMonthAloneNeverSaysThatATraineeIsBehind() {
        assertThat(TWO_A_MONTH.behind(FAMILY, YEAR, 1, new Done(0, 0, 0))).isZero();
        assertThat(TWO_A_MONTH.behind(FAMILY, YEAR, 2, new Done(0, 0, 0))).isEqualTo(4);
        assertThat(TWO_A_MONTH.behind(FAMILY, YEAR, 3, new Done(4, 4, 4)))
                .as("on plan a month ago")
                .isZero();
        assertThat(TWO_A_MONTH.behind(FAMILY, YEAR, 3, new Done(3, 5, 5)))
                .as("behind at the end of both months")
                .isEqualTo(1);
    }

    @Test
    void whatWasDoneSinceTheLastMonthCatchesUp() {
        assertThat(TWO_A_MONTH.behind(FAMILY, YEAR, 3, new Done(2, 4, 5))).isEqualTo(1);
        assertThat(TWO_A_MONTH.behind(FAMILY, YEAR, 3, new Done(2, 4, 6))).isZero();
    }

    @Test
    void aPartOfACaseIsNoCaseBehind() {
        TrainingTime quarter = time(placement("2026-01-01", "2027-12-31", 25, null));
        assertThat(TWO_A_MONTH.behind(FAMILY, quarter, 3, new Done(0, 0, 0))).isEqualTo(1);
        assertThat(TWO_A_MONTH.behind(FAMILY, quarter, 3, new Done(1, 1, 1))).isZero();
    }
}
