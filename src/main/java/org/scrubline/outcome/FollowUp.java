package org.scrubline.outcome;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.Comparator;
import java.util.function.UnaryOperator;

/**
 * When an eye is to be seen after its operation, counted from the day of the operation. Due days and accepted ranges are this
 * project's own defaults, without an outside source. The ranges never overlap.
 */
public enum FollowUp {
    D1(end -> end.plusDays(1), end -> end, end -> end.plusDays(2)),
    W1(end -> end.plusWeeks(1), end -> end.plusDays(4), end -> end.plusDays(10)),
    M1(end -> end.plusMonths(1), end -> end.plusWeeks(3), end -> end.plusWeeks(6)),
    M3(end -> end.plusMonths(3), end -> end.plusWeeks(10), end -> end.plusWeeks(16)),
    M6(end -> end.plusMonths(6), end -> end.plusMonths(5), end -> end.plusMonths(8)),
    M12(end -> end.plusMonths(12), end -> end.plusMonths(10), end -> end.plusMonths(15));

    @SuppressWarnings("ImmutableEnumChecker") // arithmetic on a day
    private final UnaryOperator<LocalDate> due;

    @SuppressWarnings("ImmutableEnumChecker") // arithmetic on a day
    private final UnaryOperator<LocalDate> from;

    @SuppressWarnings("ImmutableEnumChecker") // arithmetic on a day
    private final UnaryOperator<LocalDate> until;

    FollowUp(UnaryOperator<LocalDate> due, UnaryOperator<LocalDate> from, UnaryOperator<LocalDate> until) {
        this.due = due;
        this.from = from;
        this.until = until;
    }

    /** The day it is due. */
    public LocalDate due(LocalDate operated) {
        return due.apply(operated);
    }

    /** The first day that is inside. */
    public LocalDate from(LocalDate operated) {
        return from.apply(operated);
    }

    /** The last day that is inside. */
    public LocalDate until(LocalDate operated) {
        return until.apply(operated);
    }

    /** Whether a day lies in the accepted range. */
    public boolean takes(LocalDate operated, LocalDate day) {
        return !day.isBefore(from(operated)) && !day.isAfter(until(operated));
    }

    /** The window a visit belongs to: the one that takes its day, else the nearest range, the earlier of two as near. */
    public static FollowUp nearest(LocalDate operated, LocalDate day) {
        return Arrays.stream(values())
                .min(Comparator.comparingLong(window -> window.away(operated, day)))
                .orElseThrow();
    }

    private long away(LocalDate operated, LocalDate day) {
        long early = ChronoUnit.DAYS.between(day, from(operated));
        long late = ChronoUnit.DAYS.between(until(operated), day);
        return Math.max(0, Math.max(early, late));
    }
}
