package org.scrubline.training;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.people.Person;
import org.scrubline.people.Programme;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TypedDay;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The training records. What was written stays; who may see and add what is settled in {@link TrainingAccess}. */
@Service
@Transactional
public class TrainingRecords {

    private final TrainingStore store;
    private final TrainingAccess access;
    private final TrainingRule rule;
    private final Ledger ledger;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    TrainingRecords(
            TrainingStore store,
            TrainingAccess access,
            TrainingRule rule,
            Ledger ledger,
            ApplicationEventPublisher events,
            Clock clock) {
        this.store = store;
        this.access = access;
        this.rule = rule;
        this.ledger = ledger;
        this.events = events;
        this.clock = clock;
    }

    /** A trainee's entries as they were known at an instant, newest day first. Whoever asks has settled who may read them. */
    @Transactional(readOnly = true)
    public List<TrainingEntry> of(UUID programmeId, UUID traineeId, Instant knownAt) {
        return store.of(programmeId).stream()
                .filter(entry -> entry.traineeId().equals(traineeId))
                .map(entry -> entry.knownAt(knownAt))
                .filter(Objects::nonNull)
                .toList();
    }

    /** The programmes whose trainees this person may read about, by name; empty for trainees and visitors. */
    @Transactional(readOnly = true)
    public List<Programme> programmes(SignedIn who) {
        return access.programmes(who);
    }

    /** Everyone who trains or trained in a programme this person may read about, with what there is. */
    @Transactional(readOnly = true)
    public List<TrainingFile> all(SignedIn who, Programme programme) {
        List<TrainingEntry> entries = access.visible(who, programme.id(), store.of(programme.id()));
        return access.trainees(programme.id()).stream()
                .map(trainee -> file(who, programme, trainee, entries))
                .toList();
    }

    /**
     * One trainee's record.
     *
     * @throws NotFound for whom it is none of their business
     */
    @Transactional(readOnly = true)
    public TrainingFile read(SignedIn who, UUID traineeId) {
        TrainingAccess.Found found = access.find(who, traineeId);
        UUID programme = found.programme().id();
        return file(who, found.programme(), found.trainee(), access.visible(who, programme, store.of(programme)));
    }

    private TrainingFile file(SignedIn who, Programme programme, Person trainee, List<TrainingEntry> entries) {
        return new TrainingFile(
                programme,
                trainee,
                entries.stream()
                        .filter(entry -> entry.traineeId().equals(trainee.id()))
                        .toList(),
                access.writes(who, programme.id(), trainee.id()),
                access.answers(who, programme.id(), trainee.id()),
                access.declares(who, programme.id(), trainee.id()));
    }

    /**
     * Adds an entry. Practice a trainee enters waits for a supervisor; practice a supervisor enters is signed off.
     *
     * @return the entry, or why not, at the fields {@code kind}, {@code exercise}, {@code day} and {@code said}
     * @throws NotFound for whom the record is none of their business
     */
    public Attempt<TrainingEntry> write(SignedIn who, UUID traineeId, TrainingDraft draft) {
        TrainingAccess.Found found = access.find(who, traineeId);
        Optional<TrainingKind> kind = named(TrainingKind.values(), draft.kind())
                .filter(one -> access.writer(who, found.programme().id(), traineeId, one)
                        .isPresent());
        if (kind.isEmpty()) {
            return Attempt.refused(Refusal.at("kind", "refusal.training.kind"));
        }
        Optional<Exercise> exercise = named(Exercise.values(), draft.exercise());
        List<Refusal> reasons = rule.against(who, found, draft, kind.get(), exercise.orElse(null));
        if (!reasons.isEmpty()) {
            return Attempt.refused(reasons);
        }
        Role role = access.writer(who, found.programme().id(), traineeId, kind.get())
                .orElseThrow();
        TrainingEntry entry = new TrainingEntry(
                UUID.randomUUID(),
                found.programme().id(),
                traineeId,
                kind.get(),
                kind.get() == TrainingKind.WET_LAB ? exercise.orElseThrow() : null,
                TypedDay.of(draft.day()).orElseThrow(),
                FreeText.tidy(draft.said()),
                new TrainingEntry.Author(who.personId(), who.printedName(), role, now()),
                null);
        store.insert(entry);
        tell("training-written", who, entry, entry.kind().name());
        ledger.append(LeafKind.TRAINING_ENTRY, entry.id());
        return Attempt.done(entry);
    }

    /**
     * Answers practice a trainee entered, once.
     *
     * @param said a remark; asked for when it is not confirmed
     * @return the entry with its answer, or why not, at the fields {@code entry} and {@code remark}
     * @throws NotFound for anyone but a supervisor of the programme, and for an entry of another trainee
     */
    public Attempt<TrainingEntry> answer(SignedIn who, UUID traineeId, UUID entryId, boolean confirmed, String said) {
        TrainingFile file = read(who, traineeId);
        TrainingEntry entry = file.entries().stream()
                .filter(one -> one.id().equals(entryId) && file.answers())
                .findFirst()
                .orElseThrow(NotFound::new);
        String text = FreeText.tidy(said);
        Optional<Refusal> refusal = rule.againstAnswer(who, entry, confirmed, text);
        if (refusal.isPresent()) {
            return Attempt.refused(refusal.get());
        }
        UUID id = UUID.randomUUID();
        TrainingAnswer answer = new TrainingAnswer(who.personId(), who.printedName(), confirmed, text, now());
        if (!store.answer(id, entryId, answer)) {
            return Attempt.refused(Refusal.at("entry", "refusal.training.answered"));
        }
        tell("training-answered", who, entry, confirmed ? "CONFIRMED" : "NOT_CONFIRMED");
        ledger.append(LeafKind.TRAINING_ANSWER, id);
        return Attempt.done(entry);
    }

    private void tell(String action, SignedIn who, TrainingEntry entry, String after) {
        events.publishEvent(new TrainingChanged(action, who.personId(), entry, after));
    }

    private static <E extends Enum<E>> Optional<E> named(E[] values, String name) {
        return Arrays.stream(values).filter(one -> one.name().equals(name)).findFirst();
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }
}
