package org.scrubline.casework;

/**
 * Opens signed sheets again and closes them, for the room that signs and has checked the person's right. Each call runs
 * in the caller's transaction, which {@linkplain Sheets#hold holds} the sheet.
 */
public interface SheetVersions {

    /**
     * Opens a signed sheet for its next version.
     *
     * @param counting the sheet as the version says that counts
     */
    void reopen(Sheet counting, Reopening reopening);

    /**
     * Closes a sheet that was open again, as if it never had been.
     *
     * @param counting the sheet as the version says that counts
     */
    void drop(Sheet counting);

    /** Closes a signed sheet for good; a version open on it goes. */
    void markVoid(Sheet sheet);
}
