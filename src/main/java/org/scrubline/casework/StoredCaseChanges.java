package org.scrubline.casework;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Rubrics;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Each change locks the case first, so that two of them never pass each other. */
@Service
@Transactional
class StoredCaseChanges implements CaseChanges {

    private static final int REASON_LENGTH = 500;
    private static final int GOAL_LENGTH = 200;

    private final Cases cases;
    private final CaseStore store;
    private final ScoreRequestStore requests;
    private final CaseEntryRule entries;
    private final ScorerRule scorers;
    private final Rubrics rubrics;
    private final SheetHandOn handOn;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    StoredCaseChanges(
            Cases cases,
            CaseStore store,
            ScoreRequestStore requests,
            CaseEntryRule entries,
            ScorerRule scorers,
            Rubrics rubrics,
            SheetHandOn handOn,
            ApplicationEventPublisher events,
            Clock clock) {
        this.cases = cases;
        this.store = store;
        this.requests = requests;
        this.entries = entries;
        this.scorers = scorers;
        this.rubrics = rubrics;
        this.handOn = handOn;
        this.events = events;
        this.clock = clock;
    }

    @Override
    public Attempt<SurgicalCase> start(SignedIn who, UUID caseId) {
        CaseFile file = lock(who, caseId);
        if (file.surgicalCase().state() != CaseState.PLANNED) {
            return Attempt.refused(Refusal.of("refusal.case.not-planned"));
        }
        Optional<Refusal> reason = askPlanned(file);
        if (reason.isPresent()) {
            return Attempt.refused(reason.get());
        }
        store.start(caseId);
        tell(CaseChanged.of(
                "case-started", who, file.surgicalCase(), file.trainees().get(0).traineeId()));
        return Attempt.done(cases.get(caseId));
    }

    /** Opens the sheet of the supervisor planned, or says why that one cannot score. */
    private Optional<Refusal> askPlanned(CaseFile file) {
        UUID trainee = file.trainees().get(0).traineeId();
        UUID scorer = file.plannedScorer().orElseThrow().id();
        Optional<Refusal> reason = scorers.against(file.surgicalCase().programmeId(), trainee, scorer);
        if (reason.isEmpty()) {
            ask(file.surgicalCase(), trainee, scorer);
        }
        return reason;
    }

    @Override
    public Attempt<SurgicalCase> end(SignedIn who, UUID caseId, Instant endedAt) {
        CaseFile file = lock(who, caseId);
        CaseState state = file.surgicalCase().state();
        if (state != CaseState.PLANNED && state != CaseState.STARTED) {
            return Attempt.refused(Refusal.at("endedAt", "refusal.case.not-planned"));
        }
        Optional<Refusal> reason =
                entries.againstEnd(endedAt).or(() -> state == CaseState.PLANNED ? askPlanned(file) : Optional.empty());
        if (reason.isPresent()) {
            return Attempt.refused(reason.get());
        }
        store.end(caseId, endedAt.truncatedTo(ChronoUnit.MICROS));
        tell(CaseChanged.of(
                        "case-ended",
                        who,
                        file.surgicalCase(),
                        file.trainees().get(0).traineeId())
                .to(endedAt.toString()));
        return Attempt.done(cases.get(caseId));
    }

    @Override
    public Attempt<SurgicalCase> plan(SignedIn who, UUID caseId, LocalDate day) {
        CaseFile file = lock(who, caseId);
        if (file.surgicalCase().state() != CaseState.PLANNED) {
            return Attempt.refused(Refusal.at("plannedOn", "refusal.case.not-planned"));
        }
        Optional<Refusal> reason = entries.againstDay(day);
        if (reason.isPresent()) {
            return Attempt.refused(reason.get());
        }
        store.plan(caseId, day);
        return Attempt.done(cases.get(caseId));
    }

    @Override
    public Attempt<SurgicalCase> setGoal(SignedIn who, UUID caseId, String goal) {
        CaseFile file = lock(who, caseId);
        if (!file.hasTrainee(who.personId())) {
            throw new NotFound();
        }
        String text = FreeText.tidy(goal);
        Optional<Refusal> refusal =
                againstFacts(file.surgicalCase(), "goal").or(() -> FreeText.narrative("goal", text, GOAL_LENGTH));
        if (refusal.isPresent()) {
            return Attempt.refused(refusal.get());
        }
        store.setGoal(caseId, who.personId(), text);
        return Attempt.done(cases.get(caseId));
    }

    @Override
    public Attempt<UUID> askScorer(SignedIn who, UUID caseId, UUID traineeId, UUID supervisorId) {
        CaseFile file = lock(who, caseId);
        if (!file.hasTrainee(traineeId)) {
            return Attempt.refused(Refusal.at("trainee", "refusal.case.trainee.absent"));
        }
        return againstScorer(file.surgicalCase(), traineeId, supervisorId)
                .map(Attempt::<UUID>refused)
                .orElseGet(() -> Attempt.done(askOneMore(who, file.surgicalCase(), traineeId, supervisorId)));
    }

    @Override
    public Attempt<UUID> addTrainee(SignedIn who, UUID caseId, UUID traineeId, Part claimedPart, UUID supervisorId) {
        CaseFile file = lock(who, caseId);
        SurgicalCase found = file.surgicalCase();
        if (!scorers.holds(found.programmeId(), traineeId, Role.TRAINEE)) {
            return Attempt.refused(Refusal.at("trainee", "refusal.case.trainee.unknown"));
        }
        if (file.hasTrainee(traineeId)) {
            return Attempt.refused(Refusal.at("trainee", "refusal.case.trainee.present"));
        }
        Optional<Refusal> reason = againstScorer(found, traineeId, supervisorId);
        if (reason.isPresent()) {
            return Attempt.refused(reason.get());
        }
        store.insertTrainee(caseId, traineeId, claimedPart);
        tell(CaseChanged.of("trainee-added", who, found, traineeId));
        return Attempt.done(ask(found, traineeId, supervisorId));
    }

    @Override
    public Attempt<UUID> handOn(SignedIn who, UUID caseId, UUID sheetId, UUID supervisorId, String reason) {
        CaseFile file = lock(who, caseId);
        CaseFile.ScoreRequest request = file.requests().stream()
                .filter(visible -> visible.sheetId().equals(sheetId))
                .findFirst()
                .orElseThrow(NotFound::new);
        String why = FreeText.tidy(reason);
        Optional<Refusal> refusal = againstReason("reason", why)
                .or(() -> againstScorer(file.surgicalCase(), request.trainee().id(), supervisorId));
        if (refusal.isPresent()) {
            return Attempt.refused(refusal.get());
        }
        return handOn.apply(who, file.surgicalCase(), request, supervisorId, why)
                ? Attempt.done(sheetId)
                : Attempt.refused(Refusal.at("sheet", "refusal.case.sheet.touched"));
    }

    @Override
    public Attempt<SurgicalCase> abandon(SignedIn who, UUID caseId, String reason) {
        CaseFile file = lock(who, caseId);
        SurgicalCase found = file.surgicalCase();
        String why = FreeText.tidy(reason);
        Optional<Refusal> refusal =
                againstFacts(found, "abandonedReason").or(() -> againstReason("abandonedReason", why));
        if (refusal.isPresent()) {
            return Attempt.refused(refusal.get());
        }
        store.abandon(caseId, why);
        forEachTrainee(
                file,
                trainee -> CaseChanged.of("case-abandoned", who, found, trainee).because(why));
        return Attempt.done(cases.get(caseId));
    }

    @Override
    public Attempt<SurgicalCase> convert(SignedIn who, UUID caseId, String procedureCode) {
        CaseFile file = lock(who, caseId);
        SurgicalCase found = file.surgicalCase();
        Optional<Refusal> refusal = againstFacts(found, "convertedTo");
        if (refusal.isPresent()) {
            return Attempt.refused(refusal.get());
        }
        if (found.state() == CaseState.PLANNED) {
            return Attempt.refused(Refusal.at("convertedTo", "refusal.case.not-ended"));
        }
        if (procedureCode.equals(found.procedureCode()) || !entries.publishes(procedureCode)) {
            return Attempt.refused(Refusal.at("convertedTo", "refusal.case.converted"));
        }
        store.convert(caseId, procedureCode);
        forEachTrainee(
                file,
                trainee -> CaseChanged.of("case-converted", who, found, trainee)
                        .from(title(found.procedureCode()))
                        .to(title(procedureCode)));
        return Attempt.done(cases.get(caseId));
    }

    private CaseFile lock(SignedIn who, UUID caseId) {
        store.lock(caseId);
        return cases.open(who, caseId);
    }

    private void forEachTrainee(CaseFile file, Function<UUID, CaseChanged> change) {
        file.trainees().forEach(trainee -> tell(change.apply(trainee.traineeId())));
    }

    private String title(String procedure) {
        return rubrics.current(procedure).rubric().title();
    }

    private void tell(CaseChanged change) {
        events.publishEvent(change);
    }

    private UUID askOneMore(SignedIn who, SurgicalCase found, UUID trainee, UUID scorer) {
        tell(CaseChanged.of("scorer-asked", who, found, trainee).to(scorers.name(scorer)));
        return ask(found, trainee, scorer);
    }

    private UUID ask(SurgicalCase found, UUID trainee, UUID scorer) {
        UUID rubric = requests.rubricInUse(found.id())
                .orElseGet(() -> rubrics.current(found.procedureCode()).id());
        UUID sheet = UUID.randomUUID();
        requests.open(sheet, found.id(), trainee, scorer, rubric, clock.instant());
        return sheet;
    }

    private Optional<Refusal> againstScorer(SurgicalCase found, UUID trainee, UUID supervisor) {
        if (found.state() == CaseState.PLANNED || found.endedAt() == null) {
            return Optional.of(Refusal.at(ScorerRule.FIELD, "refusal.case.not-ended"));
        }
        if (requests.asked(found.id(), trainee, supervisor)) {
            return Optional.of(Refusal.at(ScorerRule.FIELD, "refusal.case.supervisor.asked"));
        }
        return scorers.against(found.programmeId(), trainee, supervisor);
    }

    /** What was signed about a case keeps its facts; only before may they still be put right. */
    private Optional<Refusal> againstFacts(SurgicalCase found, String field) {
        if (found.state() == CaseState.ABANDONED) {
            return Optional.of(Refusal.at(field, "refusal.case.abandoned"));
        }
        return requests.settled(found.id()) ? Optional.of(Refusal.at(field, "refusal.case.signed")) : Optional.empty();
    }

    private static Optional<Refusal> againstReason(String field, String why) {
        return why.isEmpty()
                ? Optional.of(Refusal.at(field, "refusal.case.reason"))
                : FreeText.narrative(field, why, REASON_LENGTH);
    }
}
