package org.scrubline.outcome;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.outcome.OutcomeEntry.Baseline;
import org.scrubline.outcome.OutcomeEntry.NoVisit;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional
class StoredOutcomes implements Outcomes {

    private final OutcomeStore store;
    private final OutcomeCaseQueries queries;
    private final OutcomeAccess access;
    private final People people;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    StoredOutcomes(
            OutcomeStore store,
            OutcomeCaseQueries queries,
            OutcomeAccess access,
            People people,
            ApplicationEventPublisher events,
            Clock clock) {
        this.store = store;
        this.queries = queries;
        this.access = access;
        this.people = people;
        this.events = events;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public OutcomeFile read(SignedIn who, UUID caseId) {
        SurgicalCase found = access.open(who, caseId);
        ZoneId zone = access.zone(found);
        List<OutcomeEntry> entries = store.of(caseId);
        Map<UUID, String> names = entries.stream()
                .map(OutcomeEntry::enteredBy)
                .distinct()
                .flatMap(id -> people.person(id).stream())
                .collect(Collectors.toMap(Person::id, Person::printedName));
        return new OutcomeFile(
                found,
                zone,
                CaseOutcome.of(operated(found, zone), entries),
                entries,
                names,
                queries.trainees(caseId),
                LocalDate.ofInstant(clock.instant(), zone));
    }

    private static LocalDate operated(SurgicalCase of, ZoneId zone) {
        return LocalDate.ofInstant(Objects.requireNonNull(of.endedAt()), zone);
    }

    @Override
    public Attempt<OutcomeEntry> enter(SignedIn who, UUID caseId, Entering entering) {
        SurgicalCase found = access.open(who, caseId);
        store.lock(caseId);
        ZoneId zone = access.zone(found);
        List<OutcomeEntry> entries = store.of(caseId);
        Optional<OutcomeEntry> there = same(who, entries, entering);
        if (there.isPresent()) {
            return Attempt.done(there.get());
        }
        CaseOutcome outcome = CaseOutcome.of(operated(found, zone), entries);
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        List<Refusal> reasons = new OutcomeRule(outcome, LocalDate.ofInstant(now, zone)).against(entering);
        if (!reasons.isEmpty()) {
            return Attempt.refused(reasons);
        }
        OutcomeEntry entry = new OutcomeEntry(
                UUID.randomUUID(),
                caseId,
                entries.size() + 1,
                replaced(outcome, entering),
                entering.content(),
                entering.source(),
                who.personId(),
                now);
        store.insert(entry);
        queries.trainees(caseId)
                .forEach(trainee -> events.publishEvent(OutcomeEntered.of(entry, found, trainee)));
        return Attempt.done(entry);
    }

    /** A form sent twice. */
    private static Optional<OutcomeEntry> same(SignedIn who, List<OutcomeEntry> entries, Entering entering) {
        return entries.stream()
                .skip(Math.max(0, entries.size() - 1))
                .filter(last -> last.enteredBy().equals(who.personId()))
                .filter(last -> last.content().equals(entering.content()) && last.source() == entering.source())
                .filter(last -> entering.replaces() == null || entering.replaces().equals(last.replaces()))
                .findFirst();
    }

    private static @Nullable Integer replaced(CaseOutcome outcome, Entering entering) {
        if (entering.replaces() != null) {
            return entering.replaces();
        }
        if (entering.content() instanceof Baseline) {
            return outcome.baselineEntry().map(OutcomeEntry::ordinal).orElse(null);
        }
        return entering.content() instanceof NoVisit none
                ? outcome.absence(none.window()).map(OutcomeEntry::ordinal).orElse(null)
                : null;
    }
}
