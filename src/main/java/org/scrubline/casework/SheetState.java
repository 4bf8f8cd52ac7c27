package org.scrubline.casework;

/** Where a score sheet stands. Only an open sheet can be changed; of a removed one nothing but the fact is left. */
public enum SheetState {
    OPEN,
    SIGNED,
    VOID,
    REMOVED
}
