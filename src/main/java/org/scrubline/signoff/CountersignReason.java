package org.scrubline.signoff;

/** Why a signed version needs a second supervisor's signature. Determined when it is signed and never again. */
public enum CountersignReason {
    /** The scorer had signed fewer sheets of the programme than it asks of an established one. */
    NEW_SCORER,
    /** An event that blocks "independent on this case" is recorded. */
    BLOCKING_EVENT,
    /** No earlier sheet about this trainee and procedure says "independent on this case". */
    FIRST_INDEPENDENT
}
