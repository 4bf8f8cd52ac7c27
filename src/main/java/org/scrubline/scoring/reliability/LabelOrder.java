package org.scrubline.scoring.reliability;

import java.util.Comparator;

/** Orders labels: numbers by value before names by alphabet. */
final class LabelOrder {
    static final Comparator<String> NUMBERS_FIRST =
            Comparator.comparingDouble(LabelOrder::asNumber).thenComparing(Comparator.naturalOrder());

    private LabelOrder() {}

    private static double asNumber(String label) {
        try {
            return Double.parseDouble(label);
        } catch (NumberFormatException notANumber) {
            return Double.POSITIVE_INFINITY;
        }
    }
}
