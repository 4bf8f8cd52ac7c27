package org.scrubline.people;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional
class StoredVisitors implements Visitors {

    private final VisitorStore store;
    private final VisitorRule rule;
    private final People people;
    private final Ledger ledger;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    StoredVisitors(
            VisitorStore store,
            VisitorRule rule,
            People people,
            Ledger ledger,
            ApplicationEventPublisher events,
            Clock clock) {
        this.store = store;
        this.rule = rule;
        this.people = people;
        this.ledger = ledger;
        this.events = events;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public List<VisitorAccess> toTrainee(SignedIn who, UUID traineeId) {
        return open(who).stream()
                .filter(access -> access.namesTrainee(traineeId))
                .toList();
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<VisitorAccess> toRecord(SignedIn who, UUID recordId, UUID traineeId, UUID programmeId) {
        return open(who).stream()
                .filter(access -> access.programmeId().equals(programmeId))
                .filter(access -> access.namesRecord(recordId) || access.namesTrainee(traineeId))
                .findFirst();
    }

    @Override
    @Transactional(readOnly = true)
    public List<VisitorAccess> open(SignedIn who) {
        if (!who.has(Role.VISITOR)) {
            return List.of();
        }
        Instant now = clock.instant();
        return store.ofVisitor(who.personId()).stream()
                .filter(access -> access.open(now))
                .filter(access -> who.has(Role.VISITOR, access.programmeId()))
                .toList();
    }

    @Override
    @Transactional(readOnly = true)
    public List<VisitorAccess> given(SignedIn who, UUID programmeId) {
        check(who, programmeId);
        return store.ofProgramme(programmeId);
    }

    @Override
    public Attempt<VisitorAccess> give(SignedIn who, UUID programmeId, VisitorRequest request) {
        check(who, programmeId);
        Programme programme = people.programme(programmeId);
        VisitorRequest tidied = new VisitorRequest(
                request.visitorId(),
                FreeText.tidy(request.purpose()),
                request.traineeIds().stream().distinct().toList(),
                request.recordIds().stream().distinct().toList(),
                request.from(),
                request.until());
        List<Refusal> reasons = rule.against(programme, tidied, clock.instant());
        return reasons.isEmpty() ? Attempt.done(open(who, programme, tidied)) : Attempt.refused(reasons);
    }

    private VisitorAccess open(SignedIn who, Programme programme, VisitorRequest request) {
        Instant from = Objects.requireNonNull(request.from())
                .atStartOfDay(programme.zone())
                .toInstant();
        Instant until = Objects.requireNonNull(request.until())
                .plusDays(1)
                .atStartOfDay(programme.zone())
                .toInstant();
        UUID id = UUID.randomUUID();
        store.insert(new VisitorStore.Fresh(id, programme.id(), request, from, until, who.personId(), clock.instant()));
        VisitorAccess access = store.find(id).orElseThrow();
        VisitorAccessChanged.of("visitor-let-in", who.personId(), access).forEach(events::publishEvent);
        ledger.append(LeafKind.VISIT, id);
        return access;
    }

    @Override
    public void end(SignedIn who, UUID accessId) {
        VisitorAccess access = store.find(accessId).orElseThrow(NotFound::new);
        check(who, access.programmeId());
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        if (now.isBefore(access.until()) && store.end(accessId, now, who.personId())) {
            VisitorAccessChanged.of("visitor-shown-out", who.personId(), access).forEach(events::publishEvent);
        }
    }

    private static void check(SignedIn who, UUID programmeId) {
        if (!who.has(Role.DIRECTOR, programmeId)) {
            throw new NotFound();
        }
    }
}
