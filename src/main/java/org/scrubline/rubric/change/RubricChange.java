package org.scrubline.rubric.change;

/**
 * One thing a version changes.
 *
 * @param step code of the step, empty for the rubric as a whole
 * @param name name of the step, or of the measure
 * @param before what it was, as shown; may be empty
 * @param after what it is, as shown; may be empty
 */
public record RubricChange(Kind kind, String step, String name, String before, String after) {

    /** What changes; each has a sentence {@code rubric.change.KIND}. */
    public enum Kind {
        TITLE,
        STEP_NEW,
        STEP_GONE,
        STEP_MOVED,
        STEP_RENAMED,
        /** The name changed so much that the code may stand for another step now. */
        MEANING_IN_DOUBT,
        CRITICAL_NOW,
        CRITICAL_NO_MORE,
        ONLY_WHEN_CONVERTED,
        ALWAYS_OFFERED,
        SEES,
        LEVEL,
        HAZARDS,
        COACHING,
        SOURCES,
        MEASURE_NEW,
        MEASURE_GONE,
        MEASURE_TOLERANCE,
        MEASURE_CHANGED
    }
}
