package org.scrubline.committee;

/** Why an entitlement is suspended. */
public enum SuspensionGround {
    /** No case of the family for longer than the programme allows. */
    GAP,
    /** An event is being looked into. */
    EVENT_REVIEW,
    OTHER
}
