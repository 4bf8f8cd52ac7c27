package org.scrubline.casework.web;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.CaseAside;
import org.scrubline.casework.CaseFile;
import org.scrubline.casework.Cases;
import org.scrubline.casework.Eye;
import org.scrubline.casework.Supervision;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.people.People;
import org.scrubline.people.Site;
import org.scrubline.platform.FormView;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.springframework.stereotype.Component;
import org.springframework.util.LinkedMultiValueMap;
import org.springframework.util.MultiValueMap;

/** Makes the form that logs or plans a case: fresh, for the other eye, or as it was sent. */
@Component
class CaseEntryPages {

    private final Cases cases;
    private final People people;
    private final CaseWords words;
    private final CaseBand band;
    private final Wording wording;
    private final Clock clock;

    CaseEntryPages(Cases cases, People people, CaseWords words, CaseBand band, Wording wording, Clock clock) {
        this.cases = cases;
        this.people = people;
        this.words = words;
        this.band = band;
        this.wording = wording;
        this.clock = clock;
    }

    /** A form nothing was typed into, with what the server can know: a reference, the usual site, the time. */
    Typed fresh(SignedIn who, UUID programme) {
        MultiValueMap<String, String> values = new LinkedMultiValueMap<>();
        values.add("reference", cases.proposeReference(programme));
        Optional<Site> site = usualSite(who);
        site.ifPresent(usual -> values.add("site", usual.id().toString()));
        ZoneId zone = zone(programme, site);
        values.add("endedAt", LocalEnd.now(clock.instant(), zone));
        values.add(
                "plannedOn",
                LocalDate.ofInstant(clock.instant(), zone).plusDays(1).toString());
        return new Typed(values);
    }

    /** The form with nothing but the usual site. */
    CaseEntryPage empty(SignedIn who, UUID programme) {
        MultiValueMap<String, String> values = new LinkedMultiValueMap<>();
        usualSite(who).ifPresent(usual -> values.add("site", usual.id().toString()));
        return page(who, programme, false, new Typed(values), List.of());
    }

    /** The form of a case a device sent, for its trainee alone. */
    CaseEntryPage aside(SignedIn who, CaseAside aside, Typed typed, List<Refusal> reasons) {
        return page(who, aside.programmeId(), false, typed, reasons).ownCase("/cases/aside/" + aside.id());
    }

    /** The same for the other eye of a patient operated on the same day. */
    Typed otherEye(SignedIn who, UUID first) {
        CaseFile file = cases.open(who, first);
        SurgicalCase found = file.surgicalCase();
        MultiValueMap<String, String> values = fresh(who, found.programmeId()).values();
        values.set("secondEyeOf", first.toString());
        values.set("site", found.siteId().toString());
        values.set("procedure", found.procedureCode());
        values.set("eye", found.eye() == Eye.RIGHT ? Eye.LEFT.name() : Eye.RIGHT.name());
        values.set("plannedSupervision", found.plannedSupervision().name());
        found.factors().forEach(factor -> values.add("factors", factor));
        file.requests().stream().findFirst().ifPresent(request -> {
            values.set("supervisor", request.scorer().id().toString());
            values.set("trainee", request.trainee().id().toString());
        });
        return new Typed(values);
    }

    private Optional<Site> usualSite(SignedIn who) {
        List<Site> sites = people.sites();
        if (sites.size() == 1) {
            return Optional.of(sites.get(0));
        }
        return cases.ofTrainee(who.personId()).stream()
                .findFirst()
                .flatMap(last -> people.site(last.surgicalCase().siteId()));
    }

    private ZoneId zone(UUID programme, Optional<Site> site) {
        return site.map(Site::zone).orElseGet(() -> people.programme(programme).zone());
    }

    /** Programmes in which this person may log cases. */
    List<UUID> programmes(SignedIn who) {
        return who.grants().stream()
                .filter(grant -> grant.role() == Role.TRAINEE || grant.role() == Role.SUPERVISOR)
                .map(SignedIn.Grant::programmeId)
                .distinct()
                .sorted()
                .toList();
    }

    /**
     * The programme of the form: the one named, else the person's first.
     *
     * @throws NotFound when the person logs no cases there
     */
    UUID programme(SignedIn who, Optional<UUID> named) {
        List<UUID> own = programmes(who);
        return named.or(() -> own.stream().findFirst()).filter(own::contains).orElseThrow(NotFound::new);
    }

    CaseEntryPage page(SignedIn who, UUID programme, boolean planned, Typed typed, List<Refusal> reasons) {
        String action = planned ? "/cases/plan" : "/cases/new";
        Map<String, String> values = typed.values().toSingleValueMap();
        return new CaseEntryPage(
                action,
                planned,
                programme.toString(),
                otherProgrammes(who, programme, action),
                new FormView(values, wording.errors(reasons)),
                typed.all("factors"),
                readings(programme, typed),
                typed.text("action").equals("band") ? band.sentence(who, typed) : null,
                existing(who, programme, typed, reasons),
                typed.id("secondEyeOf")
                        .map(first -> cases.open(who, first).surgicalCase().reference())
                        .orElse(null),
                choices(who, programme, planned));
    }

    private List<Link> otherProgrammes(SignedIn who, UUID programme, String action) {
        return programmes(who).stream()
                .filter(other -> !other.equals(programme))
                .map(other -> new Link(
                        action + "?programme=" + other, people.programme(other).name(), null, null))
                .toList();
    }

    private List<Option> readings(UUID programme, Typed typed) {
        return LocalEnd.readings(
                typed.text("endedAt"), zone(programme, typed.id("site").flatMap(people::site)));
    }

    private @Nullable Link existing(SignedIn who, UUID programme, Typed typed, List<Refusal> reasons) {
        boolean taken = reasons.stream().anyMatch(reason -> reason.messageKey().equals("refusal.case.reference.taken"));
        return Optional.of(typed.text("reference").strip().toUpperCase(java.util.Locale.ROOT))
                .filter(reference -> taken)
                .flatMap(reference -> cases.byReference(who, programme, reference))
                .map(found -> new Link("/cases/" + found.id(), found.reference(), null, null))
                .orElse(null);
    }

    private CaseEntryPage.Choices choices(SignedIn who, UUID programme, boolean planned) {
        boolean trainee = who.has(Role.TRAINEE, programme);
        boolean supervisor = who.has(Role.SUPERVISOR, programme);
        List<Option> trainees = new ArrayList<>();
        if (supervisor) {
            trainees.addAll(words.holding(programme, Role.TRAINEE, person -> true));
        }
        return new CaseEntryPage.Choices(
                words.procedures(),
                words.choices(Eye.class),
                words.sites(),
                trainees,
                trainee
                        ? words.holding(
                                programme,
                                Role.SUPERVISOR,
                                person -> !person.id().equals(who.personId()))
                        : List.of(),
                words.choices(Supervision.class),
                words.parts(planned),
                words.factors());
    }
}
