package org.scrubline.rubric;

/** Why the supervisor took a step over. Only a takeover for safety blocks. */
public enum TakeoverReason {
    TEACHING,
    TIME,
    SAFETY
}
