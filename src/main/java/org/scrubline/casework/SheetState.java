package org.scrubline.casework;

/** Where a score sheet stands. Only an open sheet can be changed. */
public enum SheetState {
    OPEN,
    SIGNED,
    VOID
}
