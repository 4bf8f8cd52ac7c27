package org.scrubline.audit.web;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.audit.AuditFilter;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Refusal;

/** What was typed to narrow the list, as it was typed. */
record DoneForm(Map<String, String> typed) {

    /** Of the parameters of a request, those that narrow. */
    static DoneForm of(Map<String, String> parameters) {
        return new DoneForm(Stream.of("person", "action", "from", "until")
                .filter(field -> !typedText(parameters, field).isEmpty())
                .collect(Collectors.toUnmodifiableMap(field -> field, field -> typedText(parameters, field))));
    }

    private static String typedText(Map<String, String> typed, String field) {
        return typed.getOrDefault(field, "").strip();
    }

    /** The filter, or what cannot be read. Days begin and end by the programme's clock; the last day is included. */
    Attempt<AuditFilter> filter(ZoneId zone) {
        List<Refusal> reasons = new ArrayList<>();
        UUID person = person(reasons);
        String action = typed.get("action");
        if (action != null && !action.equals(Actions.SECURITY) && !Actions.KNOWN.contains(action)) {
            reasons.add(Refusal.at("action", "audit.refusal.action"));
        }
        LocalDate from = day("from", reasons);
        LocalDate until = day("until", reasons);
        if (from != null && until != null && until.isBefore(from)) {
            reasons.add(Refusal.at("until", "audit.refusal.order"));
        }
        return reasons.isEmpty()
                ? Attempt.done(new AuditFilter(
                        person,
                        Actions.named(action),
                        start(from, zone),
                        start(until == null ? null : until.plusDays(1), zone)))
                : Attempt.refused(reasons);
    }

    /** The filter as the rest of an address, each part beginning with an ampersand. */
    String query() {
        return typed.entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .map(entry -> "&" + entry.getKey() + "=" + URLEncoder.encode(entry.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining());
    }

    private @Nullable UUID person(List<Refusal> reasons) {
        try {
            return typed.containsKey("person") ? UUID.fromString(typed.getOrDefault("person", "")) : null;
        } catch (IllegalArgumentException e) {
            reasons.add(Refusal.at("person", "audit.refusal.person"));
            return null;
        }
    }

    private @Nullable LocalDate day(String field, List<Refusal> reasons) {
        try {
            LocalDate day = typed.containsKey(field) ? LocalDate.parse(typed.getOrDefault(field, "")) : null;
            if (day == null || (day.getYear() >= 2000 && day.getYear() < 10_000)) {
                return day;
            }
        } catch (DateTimeParseException e) {
            // Said below, as for a day no record can have.
        }
        reasons.add(Refusal.at(field, "audit.refusal.day"));
        return null;
    }

    private static @Nullable Instant start(@Nullable LocalDate day, ZoneId zone) {
        return day == null ? null : day.atStartOfDay(zone).toInstant();
    }
}
