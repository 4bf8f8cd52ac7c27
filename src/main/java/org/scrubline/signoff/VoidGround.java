package org.scrubline.signoff;

/** What is wrong with a record that should be void. */
public enum VoidGround {
    WRONG_TRAINEE,
    WRONG_CASE,
    SCORED_TWICE,
    OTHER
}
