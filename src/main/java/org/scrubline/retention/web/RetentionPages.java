package org.scrubline.retention.web;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.people.Programme;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FormView;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.scrubline.retention.RecordHold;
import org.scrubline.retention.Retention;
import org.scrubline.retention.RetentionTerms;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.stereotype.Component;

/** Makes the page of retention and reads its forms. */
@Component
class RetentionPages {

    private final Retention retention;
    private final Wording wording;

    RetentionPages(Retention retention, Wording wording) {
        this.retention = retention;
        this.wording = wording;
    }

    /**
     * The page.
     *
     * @param lines how long what is kept, in sentences
     * @param mayChange whether the reader directs the programme
     */
    record Page(String programme, List<String> lines, boolean mayChange, List<Option> trainees, List<HoldLine> holds) {}

    /** One entry of a select field. */
    record Option(String value, String label) {}

    /** A hold; {@code end} is the address that ends it, null when it has ended. */
    record HoldLine(
            String trainee,
            String reason,
            String since,
            @Nullable String ended,
            @Nullable String end) {}

    Page page(SignedIn who, Programme programme) {
        RetentionTerms terms = retention.terms(programme.id());
        return new Page(
                programme.name(),
                List.of(
                        wording.text("retention.line.drafts", terms.draftDays(), RetentionTerms.TOLD_BEFORE_DAYS),
                        wording.text("retention.line.records", terms.recordYears()),
                        wording.text("retention.line.audit"),
                        wording.text("retention.line.exports", terms.exportDays())),
                who.has(Role.DIRECTOR, programme.id()),
                retention.trainees(who, programme.id()).stream()
                        .map(trainee -> new Option(trainee.id().toString(), trainee.printedName()))
                        .toList(),
                retention.holds(who, programme.id()).stream()
                        .map(hold -> line(hold, programme.zone()))
                        .toList());
    }

    private HoldLine line(RecordHold hold, ZoneId zone) {
        Instant ended = hold.endedAt();
        return new HoldLine(
                hold.trainee().printedName(),
                hold.reason(),
                wording.text("retention.hold.since", at(hold.setAt(), zone), hold.setBy()),
                ended == null
                        ? null
                        : wording.text(
                                "retention.hold.until",
                                at(ended, zone),
                                Optional.ofNullable(hold.endedBy()).orElse("")),
                ended == null ? "/retention/holds/" + hold.id() + "/end" : null);
    }

    private static String at(Instant instant, ZoneId zone) {
        return DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm z", LocaleContextHolder.getLocale())
                .format(instant.atZone(zone));
    }

    /** The form as it is stored. */
    FormView stored(Programme programme) {
        RetentionTerms terms = retention.terms(programme.id());
        return new FormView(
                Map.of(
                        "draftDays", Integer.toString(terms.draftDays()),
                        "recordYears", Integer.toString(terms.recordYears()),
                        "exportDays", Integer.toString(terms.exportDays())),
                List.of());
    }

    /** The terms typed, or which of them is no whole number. */
    static Attempt<RetentionTerms> terms(Map<String, String> typed) {
        List<Refusal> reasons = new ArrayList<>();
        RetentionTerms terms = new RetentionTerms(
                number("draftDays", typed, reasons),
                number("recordYears", typed, reasons),
                number("exportDays", typed, reasons));
        return reasons.isEmpty() ? Attempt.done(terms) : Attempt.refused(reasons);
    }

    private static int number(String field, Map<String, String> typed, List<Refusal> reasons) {
        String text = typed.getOrDefault(field, "").strip();
        if (text.matches("[0-9]{1,6}")) {
            return Integer.parseInt(text);
        }
        reasons.add(Refusal.at(field, "refusal.retention.number"));
        return 0;
    }

    /** The trainee chosen; empty when none is or the choice is no id. */
    static Optional<UUID> trainee(Map<String, String> typed) {
        try {
            return Optional.of(UUID.fromString(typed.getOrDefault("trainee", "")));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }
}
