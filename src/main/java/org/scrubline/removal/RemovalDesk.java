package org.scrubline.removal;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.ledger.Assertions;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.people.People;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Recognised;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.retention.Retention;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Requests and removals, one transaction each. Whoever calls has recognised the person. */
@Service
@Transactional
class RemovalDesk {

    private final RemovalStore store;
    private final Retention retention;
    private final People people;
    private final Ledger ledger;
    private final Assertions assertions;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    RemovalDesk(
            RemovalStore store,
            Retention retention,
            People people,
            Ledger ledger,
            Assertions assertions,
            ApplicationEventPublisher events,
            Clock clock) {
        this.store = store;
        this.retention = retention;
        this.people = people;
        this.ledger = ledger;
        this.assertions = assertions;
        this.events = events;
        this.clock = clock;
    }

    @Transactional(readOnly = true)
    public List<EndedTerm> ended(SignedIn who, UUID programme) {
        role(who, programme);
        return due(programme);
    }

    private List<EndedTerm> due(UUID programme) {
        int years = retention.terms(programme).recordYears();
        Instant before =
                clock.instant().atOffset(ZoneOffset.UTC).minusYears(years).toInstant();
        return store.ended(programme, before);
    }

    @Transactional(readOnly = true)
    public List<RemovalFile> files(SignedIn who, UUID programme) {
        role(who, programme);
        return store.files(programme);
    }

    @Transactional(readOnly = true)
    public RemovalFile file(SignedIn who, UUID request) {
        RemovalFile file = store.file(request).orElseThrow(NotFound::new);
        role(who, file.programme());
        return file;
    }

    public Attempt<UUID> ask(SignedIn who, UUID programme, UUID trainee, String reason, Recognised how) {
        Role role = role(who, programme);
        store.lock(programme);
        Optional<RemovalFile> waiting = store.files(programme).stream()
                .filter(file -> file.trainee().equals(trainee) && file.removed() == null)
                .findFirst();
        if (waiting.isPresent()) {
            return waiting.get().askedBy().equals(who.personId())
                    ? Attempt.done(waiting.get().request())
                    : Attempt.refused(Refusal.at("trainee", "refusal.removal.asked"));
        }
        Optional<Refusal> refusal = against(who, programme, trainee).or(() -> against(reason));
        if (refusal.isPresent()) {
            return Attempt.refused(refusal.get());
        }
        RemovalStore.Said said = said(who, role, how);
        store.ask(programme, trainee, reason, said);
        events.publishEvent(new RemovalChanged("removal-asked", said, programme, trainee, reason));
        ledger.append(LeafKind.REMOVAL_REQUEST, said.id());
        assertions.keep(LeafKind.REMOVAL_REQUEST, said.id(), how);
        return Attempt.done(said.id());
    }

    public Attempt<UUID> confirm(SignedIn who, UUID request, Recognised how) {
        RemovalFile file = file(who, request);
        store.lock(file.programme());
        RemovalFile.Removed before = file(who, request).removed();
        if (before != null) {
            return Attempt.done(before.id());
        }
        Role role = role(who, file.programme());
        Optional<Refusal> refusal = second(who, file).or(() -> against(who, file.programme(), file.trainee()));
        return refusal.map(Attempt::<UUID>refused)
                .orElseGet(() -> Attempt.done(remove(file, said(who, role, how), how)));
    }

    /** The tombstone and its leaf come first: what they list is what the database then removes. */
    private UUID remove(RemovalFile file, RemovalStore.Said said, Recognised how) {
        int records = due(file.programme()).stream()
                .filter(ended -> ended.trainee().equals(file.trainee()))
                .mapToInt(EndedTerm::records)
                .sum();
        store.tombstone(file, records, retention.terms(file.programme()).recordYears(), said);
        store.remove(said.id());
        events.publishEvent(
                new RemovalChanged("records-removed", said, file.programme(), file.trainee(), file.reason()));
        ledger.append(LeafKind.RECORD_REMOVAL, said.id());
        assertions.keep(LeafKind.RECORD_REMOVAL, said.id(), how);
        return said.id();
    }

    private Optional<Refusal> second(SignedIn who, RemovalFile file) {
        boolean stillThere = people.holding(file.programme(), Role.DIRECTOR).stream()
                        .anyMatch(person -> person.id().equals(file.askedBy()))
                || people.holding(file.programme(), Role.ADMINISTRATOR).stream()
                        .anyMatch(person -> person.id().equals(file.askedBy()));
        if (file.askedBy().equals(who.personId())) {
            return Optional.of(Refusal.of("refusal.removal.second"));
        }
        return stillThere ? Optional.empty() : Optional.of(Refusal.of("refusal.removal.gone", file.askedName()));
    }

    private Optional<Refusal> against(SignedIn who, UUID programme, UUID trainee) {
        if (trainee.equals(who.personId())) {
            return Optional.of(Refusal.at("trainee", "refusal.removal.own"));
        }
        return due(programme).stream()
                .filter(ended -> ended.trainee().equals(trainee))
                .findFirst()
                .map(ended -> ended.held()
                        ? Optional.of(Refusal.at("trainee", "refusal.removal.held"))
                        : Optional.<Refusal>empty())
                .orElseGet(() -> Optional.of(Refusal.at("trainee", "refusal.removal.term")));
    }

    private static Optional<Refusal> against(String reason) {
        return reason.isEmpty()
                ? Optional.of(Refusal.at("reason", "refusal.removal.reason"))
                : FreeText.narrative("reason", reason, Removals.REASON_LENGTH);
    }

    private RemovalStore.Said said(SignedIn who, Role role, Recognised how) {
        return new RemovalStore.Said(
                UUID.randomUUID(), who, role, clock.instant().truncatedTo(ChronoUnit.MILLIS), how.used());
    }

    /** In which role somebody speaks here; the page does not exist for others, nor for one whose role is gone. */
    private Role role(SignedIn who, UUID programme) {
        return List.of(Role.DIRECTOR, Role.ADMINISTRATOR).stream()
                .filter(role -> who.has(role, programme))
                .filter(role -> people.holding(programme, role).stream()
                        .anyMatch(person -> Objects.equals(person.id(), who.personId())))
                .findFirst()
                .orElseThrow(NotFound::new);
    }
}
