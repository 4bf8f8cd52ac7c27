package org.scrubline.casework;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
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

    private final Cases cases;
    private final CaseStore store;
    private final ScoreRequestStore requests;
    private final CaseEntryRule entries;
    private final ScorerRule scorers;
    private final Rubrics rubrics;
    private final Ledger ledger;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    StoredCaseChanges(
            Cases cases,
            CaseStore store,
            ScoreRequestStore requests,
            CaseEntryRule entries,
            ScorerRule scorers,
            Rubrics rubrics,
            Ledger ledger,
            ApplicationEventPublisher events,
            Clock clock) {
        this.cases = cases;
        this.store = store;
        this.requests = requests;
        this.entries = entries;
        this.scorers = scorers;
        this.rubrics = rubrics;
        this.ledger = ledger;
        this.events = events;
        this.clock = clock;
    }

    @Override
    public Attempt<SurgicalCase> end(SignedIn who, UUID caseId, Instant endedAt) {
        CaseFile file = lock(who, caseId);
        if (file.surgicalCase().state() != CaseState.PLANNED) {
            return Attempt.refused(Refusal.at("endedAt", "refusal.case.not-planned"));
        }
        CaseFile.Participant trainee = file.trainees().get(0);
        UUID scorer = file.plannedScorer().orElseThrow().id();
        Optional<Refusal> reason = entries.againstEnd(endedAt)
                .or(() -> scorers.against(file.surgicalCase().programmeId(), trainee.traineeId(), scorer));
        if (reason.isPresent()) {
            return Attempt.refused(reason.get());
        }
        store.end(caseId, endedAt.truncatedTo(ChronoUnit.MICROS));
        ask(file.surgicalCase(), trainee.traineeId(), scorer);
        tell(CaseChanged.of("case-ended", who, file.surgicalCase(), trainee.traineeId())
                .to(endedAt.toString()));
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
        UUID from = request.scorer().id();
        if (!requests.handOn(sheetId, from, supervisorId, clock.instant())) {
            return Attempt.refused(Refusal.at("sheet", "refusal.case.sheet.touched"));
        }
        UUID note = requests.noteHandOn(sheetId, from, supervisorId, who.personId(), why, clock.instant());
        tell(CaseChanged.of(
                        "sheet-handed-on",
                        who,
                        file.surgicalCase(),
                        request.trainee().id())
                .because(why)
                .from(request.scorer().name())
                .to(scorers.name(supervisorId)));
        ledger.append(LeafKind.HANDED_ON, note);
        return Attempt.done(sheetId);
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
                : FreeText.check(field, why, REASON_LENGTH);
    }
}
