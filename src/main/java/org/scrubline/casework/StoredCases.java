package org.scrubline.casework;

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
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.RubricLibrary;
import org.scrubline.rubric.Rubrics;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional
class StoredCases implements Cases {

    private final CaseStore store;
    private final CaseQueries queries;
    private final EndedCaseQueries ended;
    private final ScoreRequestStore requests;
    private final CaseAccess access;
    private final CaseEntryRule rule;
    private final Rubrics rubrics;
    private final RubricLibrary library;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    StoredCases(
            CaseStore store,
            CaseQueries queries,
            EndedCaseQueries ended,
            ScoreRequestStore requests,
            CaseAccess access,
            CaseEntryRule rule,
            Rubrics rubrics,
            RubricLibrary library,
            ApplicationEventPublisher events,
            Clock clock) {
        this.store = store;
        this.queries = queries;
        this.ended = ended;
        this.requests = requests;
        this.access = access;
        this.rule = rule;
        this.rubrics = rubrics;
        this.library = library;
        this.events = events;
        this.clock = clock;
    }

    @Override
    public Attempt<SurgicalCase> log(SignedIn who, CaseEntry entry) {
        List<Refusal> reasons = against(who, CaseAnswers.of(entry));
        return reasons.isEmpty() ? store(who, entry) : Attempt.refused(reasons);
    }

    @Override
    @Transactional(readOnly = true)
    public List<Refusal> against(SignedIn who, CaseAnswers answers) {
        List<Refusal> reasons = rule.against(who, answers);
        againstSecondEye(who, answers).ifPresent(reasons::add);
        withReference(answers.programmeId(), answers.reference())
                .ifPresent(other -> reasons.add(taken(answers.reference())));
        return reasons;
    }

    private Attempt<SurgicalCase> store(SignedIn who, CaseEntry entry) {
        SurgicalCase added = surgicalCase(who, entry, clock.instant().truncatedTo(ChronoUnit.MICROS));
        boolean planned = added.state() == CaseState.PLANNED;
        if (!store.insert(added, planned ? entry.supervisorId() : null)) {
            return Attempt.refused(taken(entry.reference()));
        }
        store.insertTrainee(added.id(), entry.traineeId(), entry.claimedPart());
        events.publishEvent(CaseChanged.of("case-logged", who, added, entry.traineeId()));
        if (!planned) {
            UUID rubric = rubrics.current(entry.procedureCode()).id();
            requests.open(
                    UUID.randomUUID(), added.id(), entry.traineeId(), entry.supervisorId(), rubric, added.loggedAt());
        }
        return Attempt.done(added);
    }

    private static Refusal taken(String reference) {
        return Refusal.at("reference", "refusal.case.reference.taken", reference);
    }

    private SurgicalCase surgicalCase(SignedIn who, CaseEntry entry, Instant now) {
        Instant ended = entry.endedAt();
        List<String> factors = entry.factors().stream().distinct().sorted().toList();
        return new SurgicalCase(
                UUID.randomUUID(),
                entry.programmeId(),
                entry.siteId(),
                entry.reference(),
                entry.procedureCode(),
                entry.eye(),
                ended == null ? CaseState.PLANNED : CaseState.ENDED,
                entry.plannedSupervision(),
                library.complexity().band(factors),
                factors,
                ended != null,
                ended == null ? null : ended.truncatedTo(ChronoUnit.MICROS),
                entry.endedZone(),
                null,
                null,
                entry.secondEyeOf(),
                who.personId(),
                now,
                entry.plannedOn(),
                0);
    }

    private Optional<Refusal> againstSecondEye(SignedIn who, CaseAnswers entry) {
        UUID other = entry.secondEyeOf();
        if (other == null || entry.eye() == null) {
            return Optional.empty();
        }
        boolean fits = store.find(other)
                .filter(first -> access.granted(who, first))
                .filter(first -> first.programmeId().equals(entry.programmeId()))
                .filter(first -> first.eye() != entry.eye())
                .filter(first -> Objects.equals(
                        day(first.endedAt(), entry.endedZone()), day(entry.endedAt(), entry.endedZone())))
                .isPresent();
        return fits ? Optional.empty() : Optional.of(Refusal.at("eye", "refusal.case.second-eye"));
    }

    private static @Nullable LocalDate day(@Nullable Instant at, @Nullable ZoneId zone) {
        return at == null || zone == null ? null : LocalDate.ofInstant(at, zone);
    }

    @Override
    @Transactional(readOnly = true)
    public String proposeReference(UUID programmeId) {
        String drawn = CaseReference.draw();
        while (store.byReference(programmeId, drawn).isPresent()) {
            drawn = CaseReference.draw();
        }
        return drawn;
    }

    @Override
    @Transactional(readOnly = true)
    public SurgicalCase get(UUID id) {
        return store.find(id).orElseThrow(NotFound::new);
    }

    @Override
    @Transactional(readOnly = true)
    public CaseFile open(SignedIn who, UUID id) {
        return access.file(who, get(id)).orElseThrow(NotFound::new);
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<SurgicalCase> byReference(SignedIn who, UUID programmeId, String reference) {
        return withReference(programmeId, reference).filter(found -> access.granted(who, found));
    }

    /** Asks the database for well-formed references only: others may hold what it cannot even compare. */
    private Optional<SurgicalCase> withReference(UUID programmeId, String reference) {
        return CaseReference.wellFormed(reference) ? store.byReference(programmeId, reference) : Optional.empty();
    }

    @Override
    @Transactional(readOnly = true)
    public Part claimedPart(UUID caseId, UUID traineeId) {
        return queries.claimedPart(caseId, traineeId).orElseThrow(NotFound::new);
    }

    @Override
    @Transactional(readOnly = true)
    public List<TraineeCase> ofTrainee(UUID traineeId) {
        Map<UUID, List<TraineeCase.SheetLine>> sheets = queries.sheetsOfTrainee(traineeId);
        Map<UUID, Part> parts = queries.partsOfTrainee(traineeId);
        return store.ofTrainee(traineeId).stream()
                .map(found -> new TraineeCase(
                        found,
                        Objects.requireNonNull(parts.get(found.id())),
                        sheets.getOrDefault(found.id(), List.of())))
                .toList();
    }

    @Override
    @Transactional(readOnly = true)
    public List<EndedCase> ended(UUID programmeId, String procedure) {
        return ended.of(programmeId, procedure);
    }

    @Override
    @Transactional(readOnly = true)
    public Map<UUID, OpenWork> openWork(UUID programmeId, String procedure) {
        return ended.open(programmeId, procedure);
    }

    @Override
    @Transactional(readOnly = true)
    public int operated(UUID traineeId, String procedureCode) {
        return queries.operated(traineeId, procedureCode);
    }
}
