package org.scrubline.rubric.change;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;

/** The first day of something decided now, in the zone of whoever decides. */
final class FirstDay {

    private static final int FARTHEST_YEARS = 1;

    private FirstDay() {}

    /**
     * When a typed day begins; today begins now, since nothing takes effect before it is decided.
     *
     * @param typed an ISO date such as 2026-03-12
     * @return empty unless it is a day from today to a year ahead
     */
    static Optional<Instant> begins(String typed, ZoneId zone, Instant now) {
        LocalDate today = LocalDate.ofInstant(now, zone);
        try {
            LocalDate day = LocalDate.parse(typed.strip());
            if (day.isBefore(today) || day.isAfter(today.plusYears(FARTHEST_YEARS))) {
                return Optional.empty();
            }
            return Optional.of(day.equals(today) ? now : day.atStartOfDay(zone).toInstant());
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }
}
