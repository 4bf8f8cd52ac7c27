package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;

/** The order of ids, independent of the order of rows: by number when every id is a whole number, else by text. */
final class IdOrder {

    private static final int LONGEST_NUMBER = 18;

    private IdOrder() {}

    static List<String> sorted(Collection<String> ids) {
        List<String> sorted = new ArrayList<>(ids);
        sorted.sort(of(ids));
        return sorted;
    }

    static Comparator<String> of(Collection<String> ids) {
        Comparator<String> byText = Comparator.naturalOrder();
        return ids.stream().allMatch(IdOrder::isNumber)
                ? Comparator.<String>comparingLong(Long::parseLong).thenComparing(byText)
                : byText;
    }

    static boolean isNumber(String id) {
        return !id.isEmpty() && id.length() <= LONGEST_NUMBER && id.chars().allMatch(c -> c >= '0' && c <= '9');
    }
}
