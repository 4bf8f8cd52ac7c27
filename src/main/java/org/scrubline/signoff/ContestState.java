package org.scrubline.signoff;

/** How far a contest is. */
public enum ContestState {
    /** The supervisor has not replied. */
    OPEN,
    /** The supervisor has replied; a director names the reviewer. */
    REPLIED,
    /** The reviewer named has not decided. */
    IN_REVIEW,
    UPHELD,
    NOT_UPHELD,
    WITHDRAWN;

    public boolean ended() {
        return this == UPHELD || this == NOT_UPHELD || this == WITHDRAWN;
    }
}
