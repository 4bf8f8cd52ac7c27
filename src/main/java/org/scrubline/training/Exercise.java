package org.scrubline.training;

/** What is practised away from patients. The list is common practice, without a source. */
public enum Exercise {
    FLAP,
    SUTURE,
    CONJUNCTIVA,
    OSTIUM,
    DEVICE,
    OTHER
}
