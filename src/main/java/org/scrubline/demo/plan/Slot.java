package org.scrubline.demo.plan;

import java.time.Instant;

/**
 * One operation on the calendar.
 *
 * @param month 1 to {@link DemoCast#MONTHS}
 */
record Slot(String trainee, String site, int month, Instant endedAt) {

    Slot at(Instant other) {
        return new Slot(trainee, site, month, other);
    }
}
