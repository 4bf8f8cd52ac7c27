package org.scrubline.signoff;

import org.jspecify.annotations.Nullable;

/**
 * What stands beside a record wherever it is shown. None of these changes whether it counts in a curve.
 *
 * @param contested the trainee contests it and nothing is decided yet
 * @param outcome how the newest contest that ended did; null when none has
 * @param awaitingCountersignature a second supervisor has yet to countersign this version
 */
public record RecordMarks(boolean contested, @Nullable ContestOutcome outcome, boolean awaitingCountersignature) {

    /** Nothing to say. */
    public static final RecordMarks NONE = new RecordMarks(false, null, false);
}
