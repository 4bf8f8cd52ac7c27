package org.scrubline.casework;

/** Where a case stands. Complexity is locked from STARTED on; a later entry is kept and shown as set after the case. */
public enum CaseState {
    PLANNED,
    STARTED,
    ENDED,
    ABANDONED
}
