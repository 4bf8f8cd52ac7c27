package org.scrubline.rubric.web;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Instants as the pages of this room show them. */
final class RubricDays {

    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("d MMMM uuuu, HH:mm", Locale.UK);

    private RubricDays() {}

    /** Day and minute in UTC. */
    static String utc(Instant at) {
        return MINUTE.format(at.atZone(ZoneOffset.UTC)) + " UTC";
    }

    /** Day and minute in a zone, which is named. */
    static String in(ZoneId zone, Instant at) {
        return MINUTE.format(at.atZone(zone)) + " (" + zone.getId() + ")";
    }
}
