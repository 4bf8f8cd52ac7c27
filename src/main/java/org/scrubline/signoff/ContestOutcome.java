package org.scrubline.signoff;

/** How a contest ended. */
public enum ContestOutcome {
    /** The reviewer agreed with the trainee and signs a new version. */
    UPHELD,
    /** The reviewer found the scores right as they stand. */
    NOT_UPHELD,
    /** The trainee took the contest back. */
    WITHDRAWN
}
