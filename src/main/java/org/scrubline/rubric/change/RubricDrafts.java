package org.scrubline.rubric.change;

import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.StaleData;
import org.scrubline.rubric.Rubrics;
import org.scrubline.rubric.format.RubricReading;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The text of a procedure's next version, which directors write together; there is one open draft a procedure. */
@Service
@Transactional
public class RubricDrafts {

    /** Longest text in bytes of UTF-8. */
    static final int LARGEST = 64 * 1024;

    private final RubricDraftStore store;
    private final DraftCheck check;
    private final Rubrics rubrics;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    RubricDrafts(
            RubricDraftStore store, DraftCheck check, Rubrics rubrics, ApplicationEventPublisher events, Clock clock) {
        this.store = store;
        this.check = check;
        this.rubrics = rubrics;
        this.events = events;
        this.clock = clock;
    }

    /**
     * The open draft of a procedure.
     *
     * @throws NotFound for who may not see drafts, and for a procedure without a rubric
     */
    @Transactional(readOnly = true)
    public Optional<RubricDraft> open(SignedIn who, String procedure) {
        RubricPeople.requireReader(who);
        rubrics.current(procedure);
        return store.open(procedure);
    }

    /** What the format says of a draft: its rubric, or every fault by line. */
    @Transactional(readOnly = true)
    public RubricReading read(RubricDraft draft) {
        return check.check(draft.procedure(), draft.source());
    }

    /** Begins a draft with the text of the version in force; one that is open stays as it is. */
    public RubricDraft begin(SignedIn director, String procedure) {
        RubricPeople.requireDirector(director);
        String source = RubricDraft.text(rubrics.current(procedure).rubric());
        if (store.insert(procedure, source, director.personId(), now())) {
            tell("rubric-draft-begun", director, require(procedure));
        }
        return require(procedure);
    }

    /**
     * Saves a text, faults and all; they only stand in the way of a review.
     *
     * @param lockNo of the draft as it was read
     * @return the draft, or why the text cannot be kept, at the field {@code source}
     * @throws StaleData with both texts when somebody else saved meanwhile
     */
    public Attempt<RubricDraft> save(SignedIn director, String procedure, int lockNo, String typed) {
        RubricPeople.requireDirector(director);
        RubricDraft draft = require(procedure);
        String source = FreeText.tidy(typed);
        Optional<Refusal> unfit = unfit(source);
        if (unfit.isPresent()) {
            return Attempt.refused(unfit.get());
        }
        if (draft.source().equals(source)) {
            return Attempt.done(draft);
        }
        if (draft.lockNo() != lockNo || !store.save(draft, source, director.personId(), now())) {
            throw stale(draft, source);
        }
        RubricDraft saved = require(procedure);
        tell("rubric-draft-saved", director, saved);
        return Attempt.done(saved);
    }

    /** Ends a draft without publishing it. */
    public void drop(SignedIn director, String procedure, int lockNo) {
        RubricPeople.requireDirector(director);
        RubricDraft draft = require(procedure);
        if (draft.lockNo() != lockNo || !store.end(draft, now())) {
            throw stale(draft, "");
        }
        tell("rubric-draft-dropped", director, draft);
    }

    private static Optional<Refusal> unfit(String source) {
        if (source.isEmpty()) {
            return Optional.of(Refusal.at("source", "refusal.rubric.source"));
        }
        if (FreeText.hasForbiddenCharacter(source)) {
            return Optional.of(Refusal.at("source", "refusal.text.characters"));
        }
        int size = source.getBytes(StandardCharsets.UTF_8).length;
        return size > LARGEST
                ? Optional.of(Refusal.at("source", "refusal.rubric.size", size, LARGEST))
                : Optional.empty();
    }

    private RubricDraft require(String procedure) {
        return store.open(procedure).orElseThrow(NotFound::new);
    }

    static StaleData stale(RubricDraft stored, String yours) {
        return new StaleData(
                "/rubrics/changes/" + stored.procedure(),
                List.of(new StaleData.Line(stored.procedure(), yours, stored.source())));
    }

    private void tell(String action, SignedIn who, RubricDraft draft) {
        events.publishEvent(new RubricDeed(
                action,
                who.personId(),
                RubricDeed.item(draft.id(), draft.procedure()),
                null,
                "sha256:" + draft.hash()));
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }
}
