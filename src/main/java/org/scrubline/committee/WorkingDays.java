package org.scrubline.committee;

import java.time.DayOfWeek;
import java.time.LocalDate;

/** Counts working days: Monday to Friday. Public holidays differ by place and are counted too, so a due date is never late. */
public final class WorkingDays {

    private WorkingDays() {}

    /**
     * The day this many working days after a day.
     *
     * @param days 0 or more
     */
    public static LocalDate after(LocalDate day, int days) {
        LocalDate reached = day;
        int left = days;
        while (left > 0) {
            reached = reached.plusDays(1);
            if (reached.getDayOfWeek() != DayOfWeek.SATURDAY && reached.getDayOfWeek() != DayOfWeek.SUNDAY) {
                left--;
            }
        }
        return reached;
    }
}
