package org.scrubline.cohort;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.scrubline.cohort.signal.TraineeCounts;

class GroupTablesTests {

    private static final List<String> ANSWERS = List.of("A", "B", "C");
    private static final int LEAST = 5;

    @Test
    void groupsLargeEnoughAreCountedAgainstTheMedianOfAll() {
        GroupTables tables = GroupTables.of(trainees(40), ANSWERS, said(40, "A", "B"), LEAST);

        assertThat(tables.groups()).containsExactly("A", "B", "");
        assertThat(tables.hidden()).isFalse();
        assertThat(tables.tables().get(GroupTables.Measure.CASES).cells().get(3))
                .containsExactly(OptionalInt.of(20), OptionalInt.of(20), OptionalInt.of(40));
    }

    @Test
    void anAnswerOfFewStandsWithThoseWhoSaidNothing() {
        Map<String, String> said = said(40, "A", "A");
        said.put("1", "C");

        GroupTables tables = GroupTables.of(trainees(40), ANSWERS, said, LEAST);

        assertThat(tables.groups()).containsExactly("A", "");
    }

    @Test
    void withFourteenTraineesInGroupsOfFourNothingIsShown() {
        Map<String, String> said = new HashMap<>();
        IntStream.range(0, 12).forEach(i -> said.put(Integer.toString(i), ANSWERS.get(i / 4)));

        GroupTables tables = GroupTables.of(trainees(14), ANSWERS, said, LEAST);

        assertThat(tables.groups()).isEmpty();
        assertThat(tables.hidden()).isTrue();
    }

    @Test
    void withoutATraineeNothingIsShown() {
        assertThat(GroupTables.of(List.of(), ANSWERS, Map.of(), LEAST).hidden()).isTrue();
    }

    @Test
    void theSameTotalsAreHiddenInEveryTable() {
        GroupTables tables = GroupTables.of(trainees(16), ANSWERS, said(16, "A", "B"), LEAST);

        IntStream.range(0, tables.groups().size() + 1)
                .forEach(row -> assertThat(tables.tables().values().stream()
                                .map(table -> table.cells().get(row).get(2).isPresent())
                                .distinct())
                        .hasSize(1));
    }

    private static List<TraineeCounts> trainees(int count) {
        return IntStream.range(0, count)
                .mapToObj(i -> new TraineeCounts(Integer.toString(i), 1 + i, (i % 7) / 10.0, (i % 3) / 10.0))
                .toList();
    }

    /** Both answers in turn; every fifth person says nothing. */
    private static Map<String, String> said(int count, String even, String odd) {
        Map<String, String> said = new HashMap<>();
        IntStream.range(0, count)
                .filter(i -> i % 5 != 0)
                .forEach(i -> said.put(Integer.toString(i), i % 2 == 0 ? even : odd));
        return said;
    }
}
