package org.scrubline.demo.plan;

/** What became of a case's score. */
public enum CaseStatus {
    SIGNED,
    /** The supervisor never began. */
    NEVER_SCORED,
    /** Begun and not signed. */
    DRAFT,
    /** Signed, and made void by two people. */
    VOIDED,
    /** Begun, not signed in time, and never released. */
    CLOSED
}
