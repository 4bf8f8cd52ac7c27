package org.scrubline.outcome;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import org.scrubline.casework.SurgicalCase;
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
        return enterAll(who, caseId, List.of(entering)).fold(all -> Attempt.done(all.get(0)), Attempt::refused);
    }

    @Override
    public Attempt<List<OutcomeEntry>> enterAll(SignedIn who, UUID caseId, List<Entering> entering) {
        SurgicalCase found = access.open(who, caseId);
        store.lock(caseId);
        Sitting sitting = new Sitting(
                who.personId(),
                operated(found, access.zone(found)),
                access.zone(found),
                clock.instant().truncatedTo(ChronoUnit.MICROS),
                store.of(caseId));
        List<OutcomeEntry> answer = new ArrayList<>();
        for (Entering one : entering) {
            List<Refusal> reasons = sitting.against(one);
            if (!reasons.isEmpty()) {
                return Attempt.refused(reasons);
            }
            answer.add(sitting.add(caseId, one));
        }
        keep(found, sitting.added());
        return Attempt.done(answer);
    }

    private void keep(SurgicalCase of, List<OutcomeEntry> added) {
        List<UUID> trainees = added.isEmpty() ? List.of() : queries.trainees(of.id());
        for (OutcomeEntry entry : added) {
            store.insert(entry);
            trainees.forEach(trainee -> events.publishEvent(OutcomeEntered.of(entry, of, trainee)));
        }
    }
}
