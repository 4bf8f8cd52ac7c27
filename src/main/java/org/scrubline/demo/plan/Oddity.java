package org.scrubline.demo.plan;

/** Something unusual that happened while a case was entered or scored. */
public enum Oddity {
    /** The reference typed first belonged to another case already. */
    REFERENCE_TAKEN,
    /** A second device held an older state of the sheet and was asked to look again. */
    TWO_DEVICES,
    /** Planned and done by the supervisor alone, step by step. */
    ALL_BY_SUPERVISOR
}
