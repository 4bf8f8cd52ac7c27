package org.scrubline.outcome;

import org.jspecify.annotations.Nullable;

/**
 * A window on a day.
 *
 * @param seen the visit that counts for it; null when there was none
 * @param absence what was entered about the visit that did not come; it may stand beside a later visit
 */
public record WindowState(
        FollowUp window,
        State state,
        CaseOutcome.@Nullable Placed seen,
        @Nullable OutcomeEntry absence) {

    /** Each window has exactly one. */
    public enum State {
        NOT_DUE,
        DUE,
        /** Its range is over, and nobody said why there is no visit. */
        OVERDUE,
        SEEN,
        MISSED,
        ELSEWHERE,
        LOST;

        /** Whether somebody still has to find out. */
        public boolean open() {
            return this == DUE || this == OVERDUE;
        }
    }
}
