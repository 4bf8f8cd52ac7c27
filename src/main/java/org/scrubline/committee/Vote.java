package org.scrubline.committee;

/** A member's vote on a decision as it was put. */
public enum Vote {
    FOR,
    AGAINST,
    ABSTAINED
}
