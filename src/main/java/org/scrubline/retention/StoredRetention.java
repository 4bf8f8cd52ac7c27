package org.scrubline.retention;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.people.Person;
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
class StoredRetention implements Retention {

    private final RetentionStore store;
    private final Ledger ledger;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    StoredRetention(RetentionStore store, Ledger ledger, ApplicationEventPublisher events, Clock clock) {
        this.store = store;
        this.ledger = ledger;
        this.events = events;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public RetentionTerms terms(UUID programmeId) {
        return store.terms(programmeId).orElse(RetentionTerms.DEFAULT);
    }

    @Override
    @Transactional(readOnly = true)
    public boolean held(UUID traineeId) {
        return store.held(traineeId);
    }

    @Override
    public Attempt<RetentionTerms> change(SignedIn who, UUID programmeId, RetentionTerms terms) {
        if (!who.has(Role.DIRECTOR, programmeId)) {
            throw new NotFound();
        }
        List<Refusal> reasons = new ArrayList<>();
        within(reasons, "draftDays", terms.draftDays(), 30, 3650);
        within(reasons, "recordYears", terms.recordYears(), 1, 100);
        within(reasons, "exportDays", terms.exportDays(), 1, 365);
        if (!reasons.isEmpty()) {
            return Attempt.refused(reasons);
        }
        RetentionTerms before = terms(programmeId);
        if (!before.equals(terms)) {
            UUID changed = store.insert(programmeId, terms, who.personId(), now());
            events.publishEvent(new RetentionChanged(who.personId(), programmeId, before.value(), terms.value()));
            ledger.append(LeafKind.RETENTION_SETTING, changed);
        }
        return Attempt.done(terms);
    }

    private static void within(List<Refusal> reasons, String field, int value, int least, int most) {
        if (value < least || value > most) {
            reasons.add(Refusal.at(field, "refusal.retention.range", least, most));
        }
    }

    @Override
    @Transactional(readOnly = true)
    public List<RecordHold> holds(SignedIn who, UUID programmeId) {
        check(who, programmeId);
        return store.holds(programmeId);
    }

    @Override
    @Transactional(readOnly = true)
    public List<Person> trainees(SignedIn who, UUID programmeId) {
        check(who, programmeId);
        return store.trainees(programmeId);
    }

    @Override
    public Attempt<RecordHold> hold(SignedIn who, UUID programmeId, @Nullable UUID traineeId, String reason) {
        check(who, programmeId);
        String why = FreeText.tidy(reason);
        List<Refusal> reasons = new ArrayList<>();
        if (store.trainees(programmeId).stream()
                .noneMatch(trainee -> trainee.id().equals(traineeId))) {
            reasons.add(Refusal.at("trainee", "refusal.hold.trainee"));
        }
        if (why.isEmpty()) {
            reasons.add(Refusal.at("reason", "refusal.hold.reason"));
        }
        FreeText.narrative("reason", why, REASON_LENGTH).ifPresent(reasons::add);
        UUID id = UUID.randomUUID();
        if (reasons.isEmpty()
                && !store.insertHold(id, programmeId, Objects.requireNonNull(traineeId), why, who.personId(), now())) {
            reasons.add(Refusal.at("trainee", "refusal.hold.held"));
        }
        return reasons.isEmpty() ? Attempt.done(told("hold-set", who, id)) : Attempt.refused(reasons);
    }

    @Override
    public void end(SignedIn who, UUID holdId) {
        check(who, store.hold(holdId).orElseThrow(NotFound::new).programmeId());
        if (store.end(holdId, who.personId(), now())) {
            told("hold-ended", who, holdId);
        }
    }

    private RecordHold told(String action, SignedIn who, UUID id) {
        RecordHold hold = store.hold(id).orElseThrow();
        events.publishEvent(HoldChanged.of(action, who.personId(), hold));
        return hold;
    }

    private static void check(SignedIn who, UUID programmeId) {
        if (!who.has(Role.DIRECTOR, programmeId) && !who.has(Role.ADMINISTRATOR, programmeId)) {
            throw new NotFound();
        }
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }
}
