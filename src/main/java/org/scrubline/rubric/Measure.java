package org.scrubline.rubric;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Something that can be measured or counted at a step. Optional at the table: it starts empty and never blocks signing.
 *
 * @param code unique within the rubric, the step code and a word, such as {@code TF06-TIME}
 * @param name what is measured, without the unit
 * @param kind how it is entered
 * @param unit unit of the value and the band, such as {@code mm}; empty when there is none
 * @param target the usual aim, as text
 * @param acceptFrom lower end of the accepted band in {@code unit}, inclusive; null when open or not a number
 * @param acceptTo upper end of the accepted band in {@code unit}, inclusive; null when open or not a number
 * @param accepted the accepted band as shown
 * @param stepSize change of one press of plus or minus, in {@code unit}; null for yes or no
 * @param sources keys of {@link Sources}, never empty
 */
public record Measure(
        String code,
        String name,
        MeasureKind kind,
        String unit,
        String target,
        @Nullable BigDecimal acceptFrom,
        @Nullable BigDecimal acceptTo,
        String accepted,
        @Nullable BigDecimal stepSize,
        List<String> sources) {

    public Measure {
        acceptFrom = plain(acceptFrom);
        acceptTo = plain(acceptTo);
        stepSize = plain(stepSize);
        sources = List.copyOf(sources);
    }

    /** One form for each number, so that 0.50 and 0.5 are equal here as they are in canonical JSON. */
    private static @Nullable BigDecimal plain(@Nullable BigDecimal number) {
        return number == null
                ? null
                : new BigDecimal(number.stripTrailingZeros().toPlainString());
    }
}
