package org.scrubline.rubric;

/** How the value of a measure is entered. */
public enum MeasureKind {
    NUMBER,
    COUNT,
    YES_NO,
    DURATION
}
