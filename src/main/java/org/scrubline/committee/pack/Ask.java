package org.scrubline.committee.pack;

/** A row of a level's checklist. The numbers asked for are this project's own defaults, without an outside source. */
public enum Ask {
    /** Cases of the family in the level's bands. */
    CASES,
    /** People who signed them. */
    SCORERS,
    /** Of the last three cases in bands A and B, those at "safe with supervisor scrubbed" or better. */
    LAST_SAFE,
    /** The chart of critical events signalled, or: of the last six cases, those without one. */
    CLEAN_RUN,
    /** Cases with an event other than a takeover whose handling is written down. */
    EVENT_HANDLED,
    /** Of the last ten cases in bands A and B, those "independent on this case". */
    INDEPENDENT_AB,
    /** Cases in band C "independent on this case". */
    INDEPENDENT_C,
    /** Cases with a visit at three months, as entered until the cut-off. */
    OUTCOMES,
    /** Records of post-operative care with every scored critical step at 4 or 5. */
    CARE_STEPS,
    /** Inductions recorded. */
    INDUCTION,
    /** Practice away from patients a supervisor signed off. */
    PRACTICE,
    /** The same of the flap. */
    FLAP_PRACTICE,
    /** The same of sutures. */
    SUTURE_PRACTICE,
    /** Introductions to scoring recorded. */
    SCORER_TRAINING,
    /** Probability, in percent, that the next typical case reaches the level's standard. */
    MODEL
}
