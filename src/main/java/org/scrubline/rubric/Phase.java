package org.scrubline.rubric;

/** A part of the operation; steps are shown and taken over by phase. */
public enum Phase {
    PREPARATION,
    EXPOSURE,
    ANTIMETABOLITE,
    FLAP,
    ENTRY,
    CLOSURE,
    FINAL_CHECKS
}
