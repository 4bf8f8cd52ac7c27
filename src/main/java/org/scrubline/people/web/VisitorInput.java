package org.scrubline.people.web;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.people.VisitorRequest;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Refusal;
import org.springframework.util.LinkedMultiValueMap;
import org.springframework.util.MultiValueMap;

/** What a director typed to open records to a visitor, as it was typed. */
record VisitorInput(MultiValueMap<String, String> typed) {

    private static final Pattern ID_AT_END =
            Pattern.compile("([0-9a-fA-F]{8}(?:-[0-9a-fA-F]{4}){3}-[0-9a-fA-F]{12})/?$");

    /** Nothing typed yet; the first day is today. */
    static VisitorInput fresh(LocalDate today) {
        MultiValueMap<String, String> values = new LinkedMultiValueMap<>();
        values.add("from", today.toString());
        return new VisitorInput(values);
    }

    /** Single values by field, for filling the form again. */
    Map<String, String> values() {
        Map<String, String> values = new HashMap<>();
        for (String field : List.of("visitor", "purpose", "records", "from", "until")) {
            values.put(field, one(field));
        }
        return values;
    }

    List<String> all(String field) {
        return typed.getOrDefault(field, List.of());
    }

    /** The request, or which parts cannot be read; what is missing is for the service to say. */
    Attempt<VisitorRequest> read() {
        List<Refusal> reasons = new ArrayList<>();
        List<String> addresses = Stream.of(one("records").split("\\s+"))
                .filter(line -> !line.isEmpty())
                .toList();
        List<UUID> records = addresses.stream()
                .map(VisitorInput::atEnd)
                .flatMap(Optional::stream)
                .toList();
        if (records.size() < addresses.size()) {
            reasons.add(Refusal.at("records", "refusal.visitor.address"));
        }
        List<UUID> trainees = all("trainees").stream()
                .map(VisitorInput::atEnd)
                .flatMap(Optional::stream)
                .toList();
        if (trainees.size() < all("trainees").size()) {
            reasons.add(Refusal.at("trainees", "refusal.visitor.trainee"));
        }
        UUID visitor = atEnd(one("visitor")).orElse(null);
        return reasons.isEmpty()
                ? Attempt.done(
                        new VisitorRequest(visitor, one("purpose"), trainees, records, day("from"), day("until")))
                : Attempt.refused(reasons);
    }

    private String one(String field) {
        String value = typed.getFirst(field);
        return value == null ? "" : value;
    }

    private static Optional<UUID> atEnd(String text) {
        Matcher id = ID_AT_END.matcher(text.strip());
        return id.find() ? Optional.of(UUID.fromString(id.group(1))) : Optional.empty();
    }

    /** Null when it is no day, which is refused like a missing one. */
    private @Nullable LocalDate day(String field) {
        try {
            LocalDate day = LocalDate.parse(one(field).strip());
            return day.getYear() < 10_000 && day.getYear() >= 2000 ? day : null;
        } catch (DateTimeParseException e) {
            return null;
        }
    }
}
