package org.scrubline.casework;

/** Where a score sheet stands. */
public enum SheetState {
    /** Being scored for the first time. */
    OPEN,
    /** Signed; the newest signed version counts. */
    SIGNED,
    /** Signed, and its next version is being written; see {@link Reopening}. */
    REOPENED,
    /** Signed and taken out of all numbers. */
    VOID;

    /** Whether its scorer, or whoever writes its next version, may change it. */
    public boolean editable() {
        return this == OPEN || this == REOPENED;
    }
}
