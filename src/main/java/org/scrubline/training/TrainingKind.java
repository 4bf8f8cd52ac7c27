package org.scrubline.training;

/** What an entry of a training record is about. */
public enum TrainingKind {
    /** Shown round and told the rules, on a day, by whom the text says. */
    INDUCTION,
    /** Where the trainee stands at the start of a year. */
    BASELINE,
    /** What the trainee wants to reach in a year. */
    GOAL,
    /** Practice away from patients. */
    WET_LAB;

    /** Whether the text is between the trainee and those who guide the training. */
    public boolean personal() {
        return this == BASELINE || this == GOAL;
    }
}
