package org.scrubline.people;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Where a trainee works for a time.
 *
 * @param first first day
 * @param planned last day as planned
 * @param share of full time in percent, 1 to 100
 * @param endedOn the last day it really had, when that was earlier; the day before {@code first} when it never began
 */
public record Placement(
        UUID id,
        UUID traineeId,
        UUID siteId,
        LocalDate first,
        LocalDate planned,
        int share,
        @Nullable LocalDate endedOn) {

    /** The day it ends or ended on, itself included. */
    public LocalDate last() {
        return endedOn == null ? planned : endedOn;
    }

    /** Whether it has a day at all. */
    public boolean began() {
        return !last().isBefore(first);
    }

    public boolean covers(LocalDate day) {
        return !day.isBefore(first) && !day.isAfter(last());
    }

    boolean overlaps(LocalDate from, LocalDate until) {
        return began() && !until.isBefore(first) && !from.isAfter(last());
    }
}
