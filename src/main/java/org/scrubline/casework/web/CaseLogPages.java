package org.scrubline.casework.web;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.scrubline.people.People;
import org.scrubline.people.Programme;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Rubrics;
import org.springframework.stereotype.Component;

/** Makes the form of a case as a trainee's device keeps it, and what the device has to know beside it. */
@Component
class CaseLogPages {

    private static final List<String> KEYS = List.of(
            "refusal.case.reference.form",
            "refusal.case.end.form",
            "refusal.case.end.gap",
            "refusal.case.end.twice",
            "refusal.case.missing.procedure",
            "refusal.case.missing.eye",
            "refusal.case.missing.site",
            "refusal.case.missing.supervisor",
            "refusal.case.missing.plannedSupervision",
            "refusal.case.missing.claimedPart");

    private final CaseEntryPages pages;
    private final People people;
    private final Rubrics rubrics;
    private final CaseBand band;
    private final SheetWords words;

    CaseLogPages(CaseEntryPages pages, People people, Rubrics rubrics, CaseBand band, SheetWords words) {
        this.band = band;
        this.pages = pages;
        this.people = people;
        this.rubrics = rubrics;
        this.words = words;
    }

    /**
     * The form, empty but for the usual site.
     *
     * @throws NotFound unless this person trains in the programme
     */
    CaseEntryPage form(SignedIn who, UUID programme) {
        if (!who.has(Role.TRAINEE, programme)) {
            throw new NotFound();
        }
        return pages.empty(who, programme).forDevice();
    }

    CaseLogPackage of(SignedIn who) {
        List<UUID> programmes = who.grants().stream()
                .filter(grant -> grant.role() == Role.TRAINEE)
                .map(SignedIn.Grant::programmeId)
                .distinct()
                .sorted()
                .toList();
        return new CaseLogPackage(
                "case-log",
                programmes.stream()
                        .map(programme -> log(who, people.programme(programme), form(who, programme)))
                        .toList());
    }

    private CaseLogPackage.Log log(SignedIn who, Programme programme, CaseEntryPage form) {
        Map<String, String> titles = new LinkedHashMap<>();
        form.choices().procedures().forEach(procedure -> titles.put(procedure.value(), procedure.label()));
        Map<String, String> versions = new LinkedHashMap<>();
        rubrics.inForce().stream()
                .filter(one -> titles.containsKey(one.rubric().procedure()))
                .forEach(one -> versions.put(one.rubric().procedure(), one.id().toString()));
        Map<String, String> zones = people.sites().stream()
                .collect(Collectors.toMap(
                        site -> site.id().toString(), site -> site.zone().getId()));
        Map<String, String> patterns = new LinkedHashMap<>();
        KEYS.forEach(key -> patterns.put(key, words.pattern(key)));
        CaseLogPackage.Bands bands = band.forDevice(who.personId(), titles.keySet());
        String shape = CanonicalJson.sha256(CanonicalJson.of(List.of(form, zones, bands, patterns)));
        return new CaseLogPackage.Log(
                programme.id(),
                programme.name(),
                shape,
                programme.zone().getId(),
                zones,
                titles,
                versions,
                bands,
                patterns);
    }
}
