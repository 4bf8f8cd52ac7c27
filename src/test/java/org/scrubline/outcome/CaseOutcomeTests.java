package org.scrubline.outcome;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.scrubline.outcome.OutcomeEntry.Absence;
import org.scrubline.outcome.OutcomeEntry.Mistake;
import org.scrubline.outcome.WindowState.State;

/** Windows and their states. Ranges: the project's own defaults, without an outside source. */
class CaseOutcomeTests {

    private static final LocalDate OPERATED = AnEye.OPERATED;

    @ParameterizedTest(name = "day {0} belongs to {1}, outside {2}")
    @CsvSource({
        "0, D1, false",
        "2, D1, false",
        "3, D1, true",
        "4, W1, false",
        "10, W1, false",
        "15, W1, true",
        "16, M1, true",
        "21, M1, false",
        "42, M1, false",
        "43, M1, true",
        "69, M3, true",
        "70, M3, false",
        "112, M3, false",
        "113, M3, true",
        "400, M12, false",
        "900, M12, true"
    })
    void aDayBelongsToItsWindowOrTheNearestOne(int days, FollowUp window, boolean outside) {
        CaseOutcome outcome = new AnEye()
                .enter(AnEye.visit(OPERATED.plusDays(days), 12, 0), null)
                .outcome();
        assertThat(outcome.visits()).singleElement().satisfies(one -> {
            assertThat(one.window()).isEqualTo(window);
            assertThat(one.outside()).isEqualTo(outside);
        });
    }

    @Test
    void aWindowIsNotDueThenDueThenOverdue() {
        CaseOutcome nothing = new AnEye().outcome();
        assertThat(state(nothing, FollowUp.W1, 3)).isEqualTo(State.NOT_DUE);
        assertThat(state(nothing, FollowUp.W1, 4)).isEqualTo(State.DUE);
        assertThat(state(nothing, FollowUp.W1, 10)).isEqualTo(State.DUE);
        assertThat(state(nothing, FollowUp.W1, 11)).isEqualTo(State.OVERDUE);
    }

    @Test
    void anAbsenceHoldsForItsWindowAndLostForTheLaterOnesUntilTheEyeIsSeenAgain() {
        AnEye eye = new AnEye().absent(FollowUp.M1, Absence.MISSED).absent(FollowUp.M3, Absence.LOST);
        assertThat(states(eye.outcome(), 40))
                .containsExactly(State.OVERDUE, State.OVERDUE, State.MISSED, State.LOST, State.LOST, State.LOST);
        assertThat(states(eye.seen(FollowUp.M6, 14, 0).outcome(), 220))
                .containsExactly(State.OVERDUE, State.OVERDUE, State.MISSED, State.LOST, State.SEEN, State.NOT_DUE);
    }

    @Test
    void theVisitInsideItsWindowCountsBeforeOneOutside() {
        CaseOutcome outcome = new AnEye()
                .enter(AnEye.visit(OPERATED.plusDays(3), 20, 0), null)
                .enter(AnEye.visit(OPERATED.plusDays(2), 12, 0), null)
                .outcome();
        assertThat(outcome.visits()).hasSize(2);
        assertThat(outcome.windows(OPERATED.plusDays(5)).get(0).seen())
                .isNotNull()
                .satisfies(one -> assertThat(one.visit().day()).isEqualTo(OPERATED.plusDays(2)));
    }

    @Test
    void whatIsPutRightHoldsNoMoreAndAMistakeLeavesNothing() {
        AnEye eye = new AnEye().before(40).before(24).seen(FollowUp.M3, 51, 0);
        eye.enter(AnEye.visit(FollowUp.M3.due(OPERATED), 15, 0), 3);
        assertThat(eye.outcome().visits())
                .singleElement()
                .satisfies(one -> assertThat(one.visit().pressure().iop()).isEqualTo(15));
        assertThat(eye.enter(new Mistake(), 4).outcome().visits()).isEmpty();
    }

    /** A seeded generator: visits and absences on any days, some put right, some mistakes. */
    @Test
    void noVisitIsLostAndEachWindowHasOneStateOnEveryDay() {
        Random random = new Random(20_260_105);
        for (int run = 0; run < 400; run++) {
            AnEye eye = new AnEye();
            Set<LocalDate> standing = new HashSet<>();
            int entries = random.nextInt(9);
            for (int i = 1; i <= entries; i++) {
                LocalDate day = OPERATED.plusDays(random.nextInt(500));
                if (random.nextInt(3) == 0) {
                    eye.absent(FollowUp.values()[random.nextInt(6)], Absence.values()[random.nextInt(3)]);
                } else if (standing.add(day)) {
                    eye.enter(AnEye.visit(day, random.nextInt(40), random.nextInt(4)), null);
                } else {
                    i--;
                }
            }
            CaseOutcome outcome = eye.outcome();
            assertThat(outcome.visits())
                    .extracting(one -> one.visit().day())
                    .containsExactlyInAnyOrderElementsOf(standing);
            LocalDate today = OPERATED.plusDays(random.nextInt(600));
            List<WindowState> windows = outcome.windows(today);
            assertThat(windows).extracting(WindowState::window).containsExactly(FollowUp.values());
            for (WindowState window : windows) {
                boolean seen = outcome.visits().stream().anyMatch(one -> one.window() == window.window());
                assertThat(window.state() == State.SEEN).isEqualTo(seen);
                assertThat(window.seen() != null).isEqualTo(seen);
                boolean early = today.isBefore(window.window().from(OPERATED));
                assertThat(window.state().open() && early).isFalse();
            }
        }
    }

    @Test
    void rangesOfWindowsNeverOverlapOnAnyDayOfFourYears() {
        for (int offset = 0; offset < 1_461; offset++) {
            LocalDate operated = LocalDate.of(2024, 1, 1).plusDays(offset);
            FollowUp[] windows = FollowUp.values();
            for (int i = 1; i < windows.length; i++) {
                assertThat(windows[i].from(operated)).isAfter(windows[i - 1].until(operated));
            }
            assertThat(Arrays.stream(windows)).allMatch(window -> window.takes(operated, window.due(operated)));
        }
    }

    private static State state(CaseOutcome outcome, FollowUp window, int days) {
        return outcome.windows(OPERATED.plusDays(days)).get(window.ordinal()).state();
    }

    private static List<State> states(CaseOutcome outcome, int days) {
        return outcome.windows(OPERATED.plusDays(days)).stream()
                .map(WindowState::state)
                .toList();
    }
}
