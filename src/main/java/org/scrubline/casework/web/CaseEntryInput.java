package org.scrubline.casework.web;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.CaseEntry;
import org.scrubline.casework.Eye;
import org.scrubline.casework.Part;
import org.scrubline.casework.Supervision;
import org.scrubline.people.Site;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;

/** Reads the form of a case: complete, or which answers are still missing. */
final class CaseEntryInput {

    private final SignedIn who;
    private final UUID programme;
    private final Typed typed;
    private final List<Refusal> missing = new ArrayList<>();

    CaseEntryInput(SignedIn who, UUID programme, Typed typed) {
        this.who = who;
        this.programme = programme;
        this.typed = typed;
    }

    /**
     * The entry.
     *
     * @param sites sites to choose from
     * @param planned whether the case is still to come, so that no end is asked for
     */
    Attempt<CaseEntry> read(List<Site> sites, boolean planned) {
        Optional<String> procedure =
                asked("procedure", Optional.of(typed.text("procedure")).filter(code -> !code.isEmpty()));
        Optional<Eye> eye = asked("eye", typed.one("eye", Eye.class));
        Optional<Site> site = asked(
                "site",
                typed.id("site")
                        .flatMap(id -> sites.stream()
                                .filter(candidate -> candidate.id().equals(id))
                                .findFirst()));
        Optional<Instant> end = planned ? Optional.empty() : site.flatMap(at -> end(at.zone()));
        Optional<UUID> trainee = asked("trainee", trainee());
        Optional<UUID> supervisor = asked("supervisor", trainee.flatMap(this::supervisor));
        Optional<Supervision> supervision =
                asked("plannedSupervision", typed.one("plannedSupervision", Supervision.class));
        Optional<Part> part = asked("claimedPart", typed.one("claimedPart", Part.class));
        if (!missing.isEmpty()) {
            return Attempt.refused(missing);
        }
        return Attempt.done(new CaseEntry(
                programme,
                trainee.orElseThrow(),
                supervisor.orElseThrow(),
                site.orElseThrow().id(),
                typed.text("reference").strip().toUpperCase(Locale.ROOT),
                procedure.orElseThrow(),
                eye.orElseThrow(),
                part.orElseThrow(),
                supervision.orElseThrow(),
                typed.all("factors"),
                orNull(end),
                site.orElseThrow().zone(),
                orNull(typed.id("secondEyeOf"))));
    }

    private static <T> @Nullable T orNull(Optional<T> value) {
        return value.isPresent() ? value.get() : null;
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
    private Optional<UUID> supervisor(UUID trainee) {
        return trainee.equals(who.personId()) ? typed.id("supervisor") : Optional.of(who.personId());
    }

    private <T> Optional<T> asked(String field, Optional<T> answer) {
        if (answer.isEmpty()) {
            missing.add(Refusal.at(field, "refusal.case.missing." + field));
        }
        return answer;
    }
}
