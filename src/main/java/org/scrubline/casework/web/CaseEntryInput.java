package org.scrubline.casework.web;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.CaseAnswers;
import org.scrubline.casework.CaseEntry;
import org.scrubline.casework.Eye;
import org.scrubline.casework.Part;
import org.scrubline.casework.Supervision;
import org.scrubline.people.Site;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;

/** Reads the form of a case: what was answered, and which answers are still missing. */
final class CaseEntryInput {

    /** Fields in the order of the form, which is the order of what is wrong with them. */
    private static final List<String> FORM = List.of(
            "reference",
            "trainee",
            "procedure",
            "eye",
            "site",
            "plannedOn",
            "endedAt",
            "endedOffset",
            "supervisor",
            "plannedSupervision",
            "claimedPart",
            "factors",
            "levels");

    private final SignedIn who;
    private final UUID programme;
    private final Typed typed;
    private final List<Refusal> missing = new ArrayList<>();
    private final Optional<String> procedure;
    private final Optional<Eye> eye;
    private final Optional<Site> site;
    private final Optional<LocalDate> day;
    private final Optional<Instant> end;
    private final Optional<UUID> trainee;
    private final Optional<UUID> supervisor;
    private final Optional<Supervision> supervision;
    private final Optional<Part> part;

    /**
     * Reads the whole form.
     *
     * @param sites sites to choose from
     * @param planned whether the case is still to come, so that a day is asked for and no end
     */
    CaseEntryInput(SignedIn who, UUID programme, Typed typed, List<Site> sites, boolean planned) {
        this.who = who;
        this.programme = programme;
        this.typed = typed;
        procedure = asked("procedure", Optional.of(typed.text("procedure")).filter(code -> !code.isEmpty()));
        eye = asked("eye", typed.one("eye", Eye.class));
        site = asked("site", typed.id("site").flatMap(id -> named(sites, id)));
        day = planned ? asked("plannedOn", day(typed.text("plannedOn"))) : Optional.empty();
        end = planned ? Optional.empty() : site.flatMap(at -> end(at.zone()));
        trainee = asked("trainee", trainee());
        supervisor = asked("supervisor", trainee.flatMap(this::supervisor));
        supervision = asked("plannedSupervision", typed.one("plannedSupervision", Supervision.class));
        part = asked("claimedPart", typed.one("claimedPart", Part.class));
    }

    /** The entry; empty while an answer is missing. */
    Optional<CaseEntry> complete() {
        if (!missing.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new CaseEntry(
                programme,
                trainee.orElseThrow(),
                supervisor.orElseThrow(),
                site.orElseThrow().id(),
                reference(),
                procedure.orElseThrow(),
                eye.orElseThrow(),
                part.orElseThrow(),
                supervision.orElseThrow(),
                typed.all("factors"),
                orNull(end),
                site.orElseThrow().zone(),
                orNull(typed.id("secondEyeOf")),
                orNull(day)));
    }

    /** What was answered so far. */
    CaseAnswers answers() {
        return new CaseAnswers(
                programme,
                orNull(trainee),
                orNull(supervisor),
                orNull(site.map(Site::id)),
                reference(),
                orNull(procedure),
                orNull(eye),
                typed.all("factors"),
                orNull(end),
                orNull(site.map(Site::zone)),
                orNull(typed.id("secondEyeOf")),
                orNull(day));
    }

    /** Everything that is wrong with the form: what is missing and these reasons, in its order. */
    List<Refusal> reasons(List<Refusal> more) {
        List<Refusal> all = new ArrayList<>(missing);
        all.addAll(more);
        all.sort(Comparator.comparingInt(reason -> FORM.indexOf(reason.field())));
        return all;
    }

    private String reference() {
        return typed.text("reference").strip().toUpperCase(Locale.ROOT);
    }

    private static <T> @Nullable T orNull(Optional<T> value) {
        return value.isPresent() ? value.get() : null;
    }

    private static Optional<Site> named(List<Site> sites, UUID id) {
        return sites.stream().filter(site -> site.id().equals(id)).findFirst();
    }

    /** The day as a date field sends it; empty when it is none. */
    static Optional<LocalDate> day(String text) {
        try {
            return Optional.of(LocalDate.parse(text));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    private Optional<Instant> end(ZoneId zone) {
        return LocalEnd.read(typed.text("endedAt"), typed.text("endedOffset"), zone)
                .fold(Optional::of, reasons -> {
                    missing.addAll(reasons);
                    return Optional.empty();
                });
    }

    /** A trainee logs an own case unless another is named; a supervisor names the trainee. */
    private Optional<UUID> trainee() {
        return typed.id("trainee")
                .or(() -> who.has(Role.TRAINEE, programme) ? Optional.of(who.personId()) : Optional.empty());
    }

    /** Who logs another person's case is the one who supervised it. */
    private Optional<UUID> supervisor(UUID of) {
        return of.equals(who.personId()) ? typed.id("supervisor") : Optional.of(who.personId());
    }

    private <T> Optional<T> asked(String field, Optional<T> answer) {
        if (answer.isEmpty()) {
            missing.add(Refusal.at(field, "refusal.case.missing." + field));
        }
        return answer;
    }
}
