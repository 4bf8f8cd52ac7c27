package org.scrubline.rubric.format;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.rubric.Rubric;

/**
 * What came of reading one text.
 *
 * @param rubric what it says; null when there is any fault
 * @param faults all that were found, by line
 */
public record RubricReading(@Nullable Rubric rubric, List<RubricFault> faults) {

    public RubricReading {
        faults = List.copyOf(faults);
    }
}
