package org.scrubline.committee;

/** How far a meeting is. */
public enum MeetingState {
    PLANNED,
    /** Decisions can be taken. */
    OPEN,
    CLOSED,
    CANCELLED;

    /** Whether evidence can still be frozen for it. */
    public boolean ahead() {
        return this == PLANNED || this == OPEN;
    }

    /** Whether this may follow. */
    boolean leadsTo(MeetingState next) {
        return switch (this) {
            case PLANNED -> next == OPEN || next == CANCELLED;
            case OPEN -> next == CLOSED;
            case CLOSED, CANCELLED -> false;
        };
    }
}
