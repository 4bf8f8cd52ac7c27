package org.scrubline.progress;

import org.jspecify.annotations.Nullable;
import org.scrubline.rubric.Step;

/**
 * One requirement of a gate that is not met.
 *
 * @param has what there is
 * @param needs what it takes; for {@link Kind#ONE_SCORER} the number of sheets {@code has} is a part of
 * @param step the critical step meant by {@link Kind#CRITICAL_STEP}, null otherwise
 */
public record Shortfall(
        Kind kind, int has, int needs, @Nullable Step step) {

    /** What is short. */
    public enum Kind {
        CASES,
        SCORERS,
        CRITICAL_STEP,
        /** One person signed more than 40 % of the sheets. */
        ONE_SCORER
    }

    static Shortfall of(Kind kind, int has, int needs) {
        return new Shortfall(kind, has, needs, null);
    }
}
