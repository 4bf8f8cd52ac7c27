package org.scrubline.cohort;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SmallNumbersTests {

    private static final int LEAST = 5;
    private static final int SMALL = 2;

    @Test
    void numbersFromTheLeastOnAreShownWithTheirTotals() {
        assertThat(texts(SmallNumbers.of(List.of(List.of(5, 6), List.of(7, 8)), LEAST)))
                .containsExactly("5 6 11", "7 8 15", "12 14 26");
    }

    @Test
    void oneSmallNumberTakesSoManyOthersThatItCannotBeWorkedOut() {
        assertThat(texts(SmallNumbers.of(List.of(List.of(4, 9, 9), List.of(8, 20, 30), List.of(9, 30, 30)), LEAST)))
                .containsExactly("– – 9 22", "– – 30 58", "9 30 30 69", "21 59 69 149");
    }

    @Test
    void aSmallTotalIsHiddenToo() {
        assertThat(SmallNumbers.of(List.of(List.of(1, 1), List.of(20, 30)), LEAST)
                        .cells()
                        .get(0))
                .containsOnly(OptionalInt.empty());
    }

    @Test
    void ofFourteenPeopleInTwoByTwoGroupsSomethingIsAlwaysHiddenAndNothingSmallShown() {
        for (int a = 0; a <= 14; a++) {
            for (int b = 0; a + b <= 14; b++) {
                for (int c = 0; a + b + c <= 14; c++) {
                    List<List<Integer>> table = List.of(List.of(a, b), List.of(c, 14 - a - b - c));
                    assertThat(SmallNumbers.of(table, LEAST).cells().stream().flatMap(List::stream))
                            .as(table.toString())
                            .allMatch(cell -> cell.orElse(LEAST) >= LEAST)
                            .anyMatch(OptionalInt::isEmpty);
                }
            }
        }
    }

    @Test
    void twentyPeopleInEvenGroupsAreNot() {
        assertThat(SmallNumbers.of(List.of(List.of(5, 5), List.of(5, 5)), LEAST).everythingHidden())
                .isFalse();
    }

    /** By trying every table that agrees with what is shown; for small tables that is feasible. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void everyHiddenNumberCouldBeAnotherAndASmallOneCouldBeNoneThatIsSmall(long seed) {
        Random random = new Random(seed);
        int shownInPart = 0;
        for (int turn = 0; turn < 6; turn++) {
            List<List<Integer>> table = List.of(row(random), row(random));
            SmallNumbers shown = SmallNumbers.of(table, SMALL);
            List<Set<Integer>> possible = possible(shown);
            shownInPart += shown.everythingHidden() ? 0 : 1;
            for (int i = 0; i < possible.size(); i++) {
                if (shown.cells().get(i / 3).get(i % 3).isEmpty()) {
                    boolean small = table.get(i / 3).get(i % 3) < SMALL;
                    assertThat(possible.get(i)).as(table + " cell " + i).hasSizeGreaterThan(1);
                    assertThat(Collections.max(possible.get(i))).isGreaterThanOrEqualTo(small ? SMALL : 0);
                }
            }
        }
        assertThat(shownInPart).isPositive();
    }

    @Test
    void tablesOfTheSameGroupsHideTheSameTotals() {
        List<List<Integer>> plain = List.of(List.of(9, 9), List.of(10, 8), List.of(9, 9));
        List<List<Integer>> small = List.of(List.of(16, 2), List.of(3, 15), List.of(9, 9));
        assertThat(SmallNumbers.of(plain, LEAST).cells().get(0).get(2)).hasValue(18);

        List<SmallNumbers> both = SmallNumbers.together(List.of(plain, small), LEAST);

        for (int row = 0; row < 3; row++) {
            assertThat(both.get(0).cells().get(row).get(2).isPresent())
                    .isEqualTo(both.get(1).cells().get(row).get(2).isPresent());
        }
        assertThat(both.get(1).cells().get(0)).contains(OptionalInt.empty());
    }

    @Test
    void aTotalHiddenBecauseOfAnotherTableCannotBeAddedUpInThisOne() {
        List<List<Integer>> alike = List.of(List.of(9, 5), List.of(5, 7), List.of(4, 0));
        List<List<Integer>> small = List.of(List.of(14, 0), List.of(12, 0), List.of(3, 1));
        assertThat(texts(SmallNumbers.of(alike, LEAST))).containsAnyOf("9 5 14", "5 7 12");

        assertThat(texts(SmallNumbers.together(List.of(small, alike), LEAST).get(1)))
                .containsExactly("– – –", "– 7 –", "– – –", "18 12 30");
    }

    private static List<Integer> row(Random random) {
        return List.of(random.nextInt(4), random.nextInt(4), random.nextInt(4));
    }

    private static List<Set<Integer>> possible(SmallNumbers shown) {
        List<Set<Integer>> possible = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            possible.add(new HashSet<>());
        }
        fill(shown, new int[6], 0, possible);
        return possible;
    }

    private static void fill(SmallNumbers shown, int[] guess, int at, List<Set<Integer>> possible) {
        if (at == guess.length) {
            if (agrees(shown, guess)) {
                for (int i = 0; i < guess.length; i++) {
                    possible.get(i).add(guess[i]);
                }
            }
            return;
        }
        OptionalInt known = shown.cells().get(at / 3).get(at % 3);
        for (int value = known.orElse(0); value <= known.orElse(5); value++) {
            guess[at] = value;
            fill(shown, guess, at + 1, possible);
        }
    }

    private static boolean agrees(SmallNumbers shown, int[] g) {
        int[] rows = {g[0] + g[1] + g[2], g[3] + g[4] + g[5]};
        int[] columns = {g[0] + g[3], g[1] + g[4], g[2] + g[5]};
        boolean agrees = fits(shown.cells().get(2).get(3), rows[0] + rows[1]);
        for (int r = 0; r < 2; r++) {
            agrees &= fits(shown.cells().get(r).get(3), rows[r]);
        }
        for (int c = 0; c < 3; c++) {
            agrees &= fits(shown.cells().get(2).get(c), columns[c]);
        }
        return agrees;
    }

    private static boolean fits(OptionalInt shown, int value) {
        return shown.isEmpty() || shown.getAsInt() == value;
    }

    @Test
    void aTableThatIsNoneIsRefused() {
        assertThatIllegalArgumentException().isThrownBy(() -> SmallNumbers.of(List.of(), LEAST));
        assertThatIllegalArgumentException().isThrownBy(() -> SmallNumbers.of(List.of(List.of(1), List.of()), LEAST));
        assertThatIllegalArgumentException().isThrownBy(() -> SmallNumbers.of(List.of(List.of(-1)), LEAST));
        assertThatIllegalArgumentException().isThrownBy(() -> SmallNumbers.of(List.of(List.of(1)), 0));
    }

    private static List<String> texts(SmallNumbers table) {
        return table.cells().stream()
                .map(row -> String.join(
                        " ",
                        row.stream()
                                .map(cell -> cell.isPresent() ? Integer.toString(cell.getAsInt()) : "–")
                                .toList()))
                .toList();
    }
}
