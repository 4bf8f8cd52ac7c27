package org.scrubline.cohort;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import org.scrubline.cohort.signal.TraineeCounts;

/**
 * Groups of trainees by one characteristic, and in each how many lie below the median of all: a table a measure, with
 * small numbers hidden in all of them together.
 *
 * @param groups answers that enough people gave, in the order of lists, then the empty word for everyone else
 * @param tables one for each measure, a row a group: below the median, at it or above; empty when no
 *     group is large enough
 */
public record GroupTables(List<String> groups, Map<Measure, SmallNumbers> tables) {

    /** What is compared. */
    public enum Measure {
        CASES(TraineeCounts::monthly),
        HARDER(TraineeCounts::harder),
        LATE(TraineeCounts::late);

        @SuppressWarnings("ImmutableEnumChecker") // a method of a record
        private final ToDoubleFunction<TraineeCounts> value;

        Measure(ToDoubleFunction<TraineeCounts> value) {
            this.value = value;
        }
    }

    public GroupTables {
        groups = List.copyOf(groups);
        tables = Map.copyOf(tables);
    }

    /**
     * Counts the groups. Answers fewer people gave than may be shown stand together with those who said nothing.
     *
     * @param answers what can be said
     * @param said answer by trainee
     * @param least the smallest number shown
     */
    public static GroupTables of(
            List<TraineeCounts> trainees, List<String> answers, Map<String, String> said, int least) {
        List<String> groups = new ArrayList<>(answers.stream()
                .filter(answer -> trainees.stream()
                                .filter(one -> answer.equals(said.get(one.trainee())))
                                .count()
                        >= least)
                .toList());
        if (groups.isEmpty()) {
            return new GroupTables(List.of(), Map.of());
        }
        groups.add("");
        List<List<List<Integer>>> counts = Arrays.stream(Measure.values())
                .map(measure -> counts(measure, trainees, groups, said))
                .toList();
        Iterator<SmallNumbers> shown = SmallNumbers.together(counts, least).iterator();
        Map<Measure, SmallNumbers> tables = new EnumMap<>(Measure.class);
        for (Measure measure : Measure.values()) {
            tables.put(measure, shown.next());
        }
        return new GroupTables(groups, tables);
    }

    private static List<List<Integer>> counts(
            Measure measure, List<TraineeCounts> trainees, List<String> groups, Map<String, String> said) {
        double[] all = trainees.stream().mapToDouble(measure.value).sorted().toArray();
        double median = (all[(all.length - 1) / 2] + all[all.length / 2]) / 2;
        return groups.stream()
                .map(group -> {
                    List<TraineeCounts> own = trainees.stream()
                            .filter(one ->
                                    group(groups, said.get(one.trainee())).equals(group))
                            .toList();
                    int below = (int) own.stream()
                            .filter(one -> measure.value.applyAsDouble(one) < median)
                            .count();
                    return List.of(below, own.size() - below);
                })
                .toList();
    }

    private static String group(List<String> groups, @Nullable String answer) {
        return answer != null && groups.contains(answer) ? answer : "";
    }

    /** Whether no number of any group may be shown. */
    public boolean hidden() {
        return tables.values().stream().allMatch(SmallNumbers::everythingHidden);
    }
}
