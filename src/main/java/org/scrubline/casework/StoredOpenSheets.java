package org.scrubline.casework;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.people.LedProgrammes;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** A sheet is held before it is looked at, like by whoever signs it, so that its state cannot change in between. */
@Service
@Transactional
class StoredOpenSheets implements OpenSheets {

    private static final int REASON_LENGTH = 500;

    private final OpenSheetQueries queries;
    private final Sheets sheets;
    private final Cases cases;
    private final ScoreRequestStore requests;
    private final ScorerRule scorers;
    private final SheetHandOn handOn;

    StoredOpenSheets(
            OpenSheetQueries queries,
            Sheets sheets,
            Cases cases,
            ScoreRequestStore requests,
            ScorerRule scorers,
            SheetHandOn handOn) {
        this.queries = queries;
        this.sheets = sheets;
        this.cases = cases;
        this.requests = requests;
        this.scorers = scorers;
        this.handOn = handOn;
    }

    @Override
    @Transactional(readOnly = true)
    public List<Holder> holders(SignedIn who, UUID programmeId) {
        require(who, programmeId);
        return queries.holders(programmeId);
    }

    @Override
    @Transactional(readOnly = true)
    public List<Held> of(SignedIn who, UUID programmeId, UUID scorerId) {
        require(who, programmeId);
        return queries.of(programmeId, scorerId);
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Begun> begun(UUID sheetId) {
        return queries.begun(sheetId);
    }

    @Override
    public Attempt<UUID> handOver(SignedIn who, UUID programmeId, UUID sheetId, UUID supervisorId, String reason) {
        require(who, programmeId);
        sheets.hold(sheetId);
        Optional<Held> found = queries.one(programmeId, sheetId);
        if (found.isEmpty()) {
            return Attempt.refused(Refusal.at("sheet", "refusal.open-sheet.closed"));
        }
        Held held = found.get();
        SurgicalCase surgicalCase = cases.get(sheets.get(sheetId).caseId());
        String why = FreeText.tidy(reason);
        Optional<Refusal> refusal = againstReason(why).or(() -> against(surgicalCase, held, supervisorId));
        if (refusal.isPresent()) {
            return Attempt.refused(refusal.get());
        }
        handOn.withContent(who, surgicalCase, held, supervisorId, why);
        return Attempt.done(sheetId);
    }

    private Optional<Refusal> against(SurgicalCase surgicalCase, Held held, UUID supervisor) {
        if (requests.asked(surgicalCase.id(), held.traineeId(), supervisor)) {
            return Optional.of(Refusal.at(ScorerRule.FIELD, "refusal.case.supervisor.asked"));
        }
        return scorers.against(surgicalCase.programmeId(), held.traineeId(), supervisor);
    }

    private static Optional<Refusal> againstReason(String why) {
        return why.isEmpty()
                ? Optional.of(Refusal.at("reason", "refusal.case.reason"))
                : FreeText.narrative("reason", why, REASON_LENGTH);
    }

    private static void require(SignedIn who, UUID programme) {
        if (!LedProgrammes.leads(who, programme)) {
            throw new NotFound();
        }
    }
}
