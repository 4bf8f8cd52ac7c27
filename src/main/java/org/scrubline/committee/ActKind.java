package org.scrubline.committee;

/** What is said after a decision, or apart from one. */
public enum ActKind {
    /** The letter about a decision was given to the trainee. */
    LETTER_SENT,
    APPEALED,
    /** A director named who hears the appeal; the newest holds. */
    PANEL_NAMED,
    APPEAL_UPHELD,
    APPEAL_NOT_UPHELD,
    /** The trainee ended the appeal. */
    APPEAL_ENDED,
    SUSPENDED,
    REINSTATED;

    public boolean endsAppeal() {
        return this == APPEAL_UPHELD || this == APPEAL_NOT_UPHELD || this == APPEAL_ENDED;
    }
}
