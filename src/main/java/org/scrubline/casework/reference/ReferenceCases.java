package org.scrubline.casework.reference;

import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.people.Programme;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TypedDay;
import org.scrubline.rubric.PublishedRubric;
import org.scrubline.rubric.Rubrics;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Reference cases: a director adds and closes them, every supervisor of the programme scores each once. Before a case is
 * closed nobody reads what others said about it; after that a supervisor does who has scored it, and a director.
 */
@Service
@Transactional
public class ReferenceCases {

    /** The answer for a step the film does not show. */
    public static final String NOT_SEEN = "NOT_SEEN";

    private final ReferenceStore store;
    private final ReferenceReading reading;
    private final ReferenceRule rule;
    private final Rubrics rubrics;
    private final Ledger ledger;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    ReferenceCases(
            ReferenceStore store,
            ReferenceReading reading,
            ReferenceRule rule,
            Rubrics rubrics,
            Ledger ledger,
            ApplicationEventPublisher events,
            Clock clock) {
        this.store = store;
        this.reading = reading;
        this.rule = rule;
        this.rubrics = rubrics;
        this.ledger = ledger;
        this.events = events;
        this.clock = clock;
    }

    /**
     * The reference cases of a programme the reader supervises in or directs.
     *
     * @param programme null for the first by name
     * @throws NotFound for anyone else
     */
    @Transactional(readOnly = true)
    public ReferenceList list(SignedIn who, @Nullable UUID programme) {
        return reading.list(who, programme);
    }

    /**
     * One of them.
     *
     * @throws NotFound for anyone but supervisors and directors of its programme
     */
    @Transactional(readOnly = true)
    public ReferenceFile open(SignedIn who, UUID id) {
        return reading.open(who, id);
    }

    /** Closed cases this supervisor scored, with everyone's scores; oldest first. */
    @Transactional(readOnly = true)
    public List<ScoredReference> comparable(SignedIn supervisor, UUID programme) {
        return reading.closed(reading.programme(supervisor, programme, Role.SUPERVISOR)).stream()
                .filter(one -> one.scorings().stream()
                        .anyMatch(scoring -> scoring.scorerId().equals(supervisor.personId())))
                .toList();
    }

    /** All closed cases, for a director; oldest first. */
    @Transactional(readOnly = true)
    public List<ScoredReference> allComparable(SignedIn director, UUID programme) {
        return reading.closed(reading.programme(director, programme, Role.DIRECTOR));
    }

    /**
     * Adds a reference case, to be scored with the rubric in force.
     *
     * @return the case, or why not, each reason at the field it is about
     * @throws NotFound for anyone but a director of the programme
     */
    public Attempt<ReferenceCase> add(SignedIn director, UUID programmeId, ReferenceDraft draft) {
        Programme programme = reading.programme(director, programmeId, Role.DIRECTOR);
        List<Refusal> reasons = rule.against(programme, draft);
        Optional<PublishedRubric> rubric = reading.inForce().stream()
                .filter(one -> one.procedure().equals(draft.procedure()))
                .map(one -> rubrics.current(one.procedure()))
                .findFirst();
        if (rubric.isEmpty()) {
            reasons.add(Refusal.at("procedure", "refusal.reference.procedure"));
        }
        if (!reasons.isEmpty()) {
            return Attempt.refused(reasons);
        }
        ReferenceCase reference = new ReferenceCase(
                UUID.randomUUID(),
                programmeId,
                FreeText.tidy(draft.reference()),
                FreeText.tidy(draft.title()),
                rubric.orElseThrow().id(),
                ReferenceRule.band(draft).orElseThrow(),
                FreeText.tidy(draft.film()),
                TypedDay.of(draft.closesOn()).orElseThrow(),
                null);
        if (!store.insert(reference, director.personId(), clock.instant())) {
            return Attempt.refused(Refusal.at("reference", "refusal.reference.taken", reference.reference()));
        }
        tell("reference-added", director, reference);
        return Attempt.done(reference);
    }

    /**
     * Closes a case before its day. Closing one that is closed changes nothing.
     *
     * @throws NotFound for anyone but a director of its programme
     */
    public void close(SignedIn director, UUID id) {
        ReferenceFile file = open(director, id);
        if (!file.directs()) {
            throw new NotFound();
        }
        if (!file.closed() && store.close(id, director.personId(), clock.instant())) {
            tell("reference-closed", director, file.reference());
        }
    }

    /**
     * Keeps what a supervisor says about a case, once and for good.
     *
     * @param answers a level 1 to 5 or {@link #NOT_SEEN} for every step of its rubric, by step code
     * @return the scores, or why not, at the fields {@code step-CODE} and {@code rest}
     * @throws NotFound for anyone but a supervisor of its programme
     */
    public Attempt<ReferenceScoring> score(SignedIn supervisor, UUID id, Map<String, String> answers) {
        ReferenceCase reference = store.held(id).orElseThrow(NotFound::new);
        Programme programme = reading.programme(supervisor, reference.programmeId(), Role.SUPERVISOR);
        if (reference.closed(rule.today(programme))) {
            return Attempt.refused(Refusal.at("rest", "refusal.reference.closed"));
        }
        Optional<Refusal> reason = rule.against(supervisor, reading.rubric(reference), answers);
        if (reason.isPresent()) {
            return Attempt.refused(reason.get());
        }
        Map<String, Integer> levels = ReferenceRule.levels(answers);
        ReferenceScoring scoring = new ReferenceScoring(
                UUID.randomUUID(),
                id,
                supervisor.personId(),
                supervisor.printedName(),
                levels,
                answers.keySet().stream()
                        .filter(step -> !levels.containsKey(step))
                        .collect(Collectors.toUnmodifiableSet()),
                clock.instant());
        if (!store.insert(scoring)) {
            return Attempt.refused(Refusal.at("rest", "refusal.reference.scored"));
        }
        tell("reference-scored", supervisor, reference);
        ledger.append(LeafKind.REFERENCE_SCORING, scoring.id());
        return Attempt.done(scoring);
    }

    private void tell(String action, SignedIn who, ReferenceCase reference) {
        events.publishEvent(new ReferenceChanged(action, who.personId(), reference));
    }
}
