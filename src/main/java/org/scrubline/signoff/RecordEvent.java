package org.scrubline.signoff;

/** Everything that can happen to one sheet, in the order it may first happen. */
public enum RecordEvent {
    /** A supervisor took the sheet up. */
    OPENED,
    /** A director let a sheet be signed that had stayed unsigned too long. */
    LATE_RELEASED,
    /** The scorer signed the first version. */
    SIGNED,
    COUNTERSIGNED,
    /** A second supervisor said why they cannot countersign; another may still do so. */
    COUNTERSIGN_REFUSED,
    /** The trainee signed that they have read this version. */
    ACKNOWLEDGED,
    /** The trainee recorded that they do not acknowledge this version. */
    NOT_ACKNOWLEDGED,
    VERSION_OPENED,
    VERSION_DROPPED,
    VERSION_SIGNED,
    VOID_ASKED,
    VOID_CONFIRMED,
    VOID_DECLINED,
    CONTEST_OPENED,
    CONTEST_REPLIED,
    REVIEWER_NAMED,
    CONTEST_UPHELD,
    CONTEST_NOT_UPHELD,
    CONTEST_WITHDRAWN
}
