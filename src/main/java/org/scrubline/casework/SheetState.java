package org.scrubline.casework;

/** Where a score sheet stands. Only an open sheet can be changed; of a removed one nothing but the fact is left. */
public enum SheetState {
    /** Being scored for the first time. */
    OPEN,
    /** Signed; the newest signed version counts. */
    SIGNED,
    /** Signed, and its next version is being written; see {@link Reopening}. */
    REOPENED,
    /** Signed and taken out of all numbers. */
    VOID,
    /** Open and untouched for so long that it was removed; nothing but the fact is left. */
    REMOVED;

    /** Whether its scorer, or whoever writes its next version, may change it. */
    public boolean editable() {
        return this == OPEN || this == REOPENED;
    }
}
