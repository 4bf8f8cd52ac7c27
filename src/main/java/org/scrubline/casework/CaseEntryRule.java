package org.scrubline.casework;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.people.People;
import org.scrubline.people.Site;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.ComplexityFactor;
import org.scrubline.rubric.RubricLibrary;
import org.scrubline.rubric.Rubrics;
import org.springframework.stereotype.Component;

/** Every reason why a case cannot be logged as entered. */
@Component
class CaseEntryRule {

    private static final Duration CLOCK_TOLERANCE = Duration.ofMinutes(10);
    private static final Duration LONG_AGO = Duration.ofDays(5 * 365);

    private final People people;
    private final Rubrics rubrics;
    private final RubricLibrary library;
    private final ScorerRule scorers;
    private final Clock clock;

    CaseEntryRule(People people, Rubrics rubrics, RubricLibrary library, ScorerRule scorers, Clock clock) {
        this.people = people;
        this.rubrics = rubrics;
        this.library = library;
        this.scorers = scorers;
        this.clock = clock;
    }

    /** What is wrong with the answers given so far; empty when nothing is. */
    List<Refusal> against(SignedIn who, CaseAnswers entry) {
        List<Refusal> reasons = new ArrayList<>();
        if (!CaseReference.wellFormed(entry.reference())) {
            reasons.add(Refusal.at("reference", "refusal.case.reference.form"));
        }
        if (entry.procedureCode() != null && !publishes(entry.procedureCode())) {
            reasons.add(Refusal.at("procedure", "refusal.case.procedure"));
        }
        Optional.ofNullable(entry.siteId())
                .flatMap(site -> againstSite(site, entry))
                .ifPresent(reasons::add);
        Optional.ofNullable(entry.endedAt()).flatMap(this::againstEnd).ifPresent(reasons::add);
        Optional.ofNullable(entry.plannedOn()).flatMap(this::againstDay).ifPresent(reasons::add);
        againstPeople(who, entry).ifPresent(reasons::add);
        if (!knowsAll(entry.factors())) {
            reasons.add(Refusal.at("factors", "refusal.case.factors"));
        }
        return reasons;
    }

    /** A site that does not exist, or was closed on the day of the case by its own calendar; a slip of a day is no day. */
    private Optional<Refusal> againstSite(UUID id, CaseAnswers entry) {
        Optional<Site> site = people.site(id);
        if (site.isEmpty()) {
            return Optional.of(Refusal.at("site", "refusal.case.site"));
        }
        LocalDate day = entry.endedAt() == null
                ? entry.plannedOn()
                : Optional.of(entry.endedAt())
                        .filter(ended -> againstEnd(ended).isEmpty())
                        .map(ended -> LocalDate.ofInstant(ended, site.get().zone()))
                        .orElse(null);
        return day == null || site.get().open(day)
                ? Optional.empty()
                : Optional.of(Refusal.at(
                        "site",
                        "refusal.case.site.closed",
                        site.get().name(),
                        String.valueOf(site.get().closedOn())));
    }

    /** An end that has not come yet, give or take a clock, or that must be a slip of the year. */
    Optional<Refusal> againstEnd(Instant endedAt) {
        Instant now = clock.instant();
        if (ahead(endedAt)) {
            return Optional.of(Refusal.at("endedAt", "refusal.case.end.future"));
        }
        if (endedAt.isBefore(now.minus(LONG_AGO))) {
            return Optional.of(Refusal.at("endedAt", "refusal.case.end.past"));
        }
        return Optional.empty();
    }

    /** Whether an end is still to come by more than clocks differ. */
    boolean ahead(@Nullable Instant endedAt) {
        return endedAt != null && endedAt.isAfter(clock.instant().plus(CLOCK_TOLERANCE));
    }

    /** A day gone by on every site's calendar, or so far off that it must be a slip of the year. */
    Optional<Refusal> againstDay(LocalDate day) {
        LocalDate today = LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
        boolean plausible = !day.isBefore(today.minusDays(1)) && !day.isAfter(today.plusYears(1));
        return plausible ? Optional.empty() : Optional.of(Refusal.at("plannedOn", "refusal.case.planned-on"));
    }

    boolean publishes(String procedure) {
        return rubrics.takingCases().contains(procedure);
    }

    private boolean knowsAll(List<String> factors) {
        return library.complexity().factors().stream()
                .map(ComplexityFactor::code)
                .toList()
                .containsAll(factors);
    }

    private Optional<Refusal> againstPeople(SignedIn who, CaseAnswers entry) {
        UUID trainee = entry.traineeId();
        return trainee == null ? Optional.empty() : againstPeople(who, entry, trainee);
    }

    private Optional<Refusal> againstPeople(SignedIn who, CaseAnswers entry, UUID trainee) {
        UUID programme = entry.programmeId();
        UUID supervisor = entry.supervisorId();
        boolean own = trainee.equals(who.personId());
        if (own && !who.has(Role.TRAINEE, programme)) {
            return Optional.of(Refusal.of("refusal.case.programme"));
        }
        if (!own && !who.has(Role.SUPERVISOR, programme)) {
            return Optional.of(Refusal.at("trainee", "refusal.case.trainee.other"));
        }
        if (!own && supervisor != null && !supervisor.equals(who.personId())) {
            return Optional.of(Refusal.at(ScorerRule.FIELD, "refusal.case.supervisor.other"));
        }
        if (!own && !scorers.holds(programme, trainee, Role.TRAINEE)) {
            return Optional.of(Refusal.at("trainee", "refusal.case.trainee.unknown"));
        }
        return supervisor == null ? Optional.empty() : scorers.against(programme, trainee, supervisor);
    }
}
