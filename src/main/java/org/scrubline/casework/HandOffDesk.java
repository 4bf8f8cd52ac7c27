package org.scrubline.casework;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.casework.HandOffs.Offer;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SecretCode;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Makes and uses codes, one transaction each. */
@Service
@Transactional
class HandOffDesk {

    static final String FIELD = "code";
    static final Refusal UNKNOWN = Refusal.at(FIELD, "hand-off.refusal.code");
    private static final int CODE_LENGTH = 8;

    private final HandOffStore store;
    private final SheetStore sheets;
    private final CaseStore cases;
    private final CaseQueries queries;
    private final ScoreRequestStore requests;
    private final ScorerRule scorers;
    private final SheetHandOn handOn;
    private final Clock clock;

    HandOffDesk(
            HandOffStore store,
            SheetStore sheets,
            CaseStore cases,
            CaseQueries queries,
            ScoreRequestStore requests,
            ScorerRule scorers,
            SheetHandOn handOn,
            Clock clock) {
        this.store = store;
        this.sheets = sheets;
        this.cases = cases;
        this.queries = queries;
        this.requests = requests;
        this.scorers = scorers;
        this.handOn = handOn;
        this.clock = clock;
    }

    public Attempt<Offer> offer(SignedIn trainee, UUID sheetId) {
        Sheet sheet = sheets.find(sheetId)
                .map(SheetStore.Draft::sheet)
                .filter(found -> found.traineeId().equals(trainee.personId()))
                .orElseThrow(NotFound::new);
        if (!untouched(sheet)) {
            return Attempt.refused(Refusal.of("hand-off.refusal.opened"));
        }
        Instant until = clock.instant().plus(HandOffs.VALID).truncatedTo(ChronoUnit.MICROS);
        String code = SecretCode.create(CODE_LENGTH);
        store.put(sheetId, SecretCode.hash(code), trainee.personId(), until);
        return Attempt.done(new Offer(sheetId, code, until));
    }

    public Attempt<UUID> take(SignedIn supervisor, String code, boolean instead) {
        Optional<Sheet> offered = store.take(SecretCode.hash(code), clock.instant())
                .flatMap(sheets::find)
                .filter(draft -> supervisor.has(Role.SUPERVISOR, draft.programmeId()))
                .map(SheetStore.Draft::sheet)
                .filter(HandOffDesk::untouched);
        if (offered.isEmpty()) {
            return Attempt.refused(UNKNOWN);
        }
        Sheet sheet = offered.get();
        Attempt<UUID> taken = sheet.scorerId().equals(supervisor.personId())
                ? Attempt.done(sheet.id())
                : takeInstead(supervisor, sheet, instead);
        if (taken instanceof Attempt.Done<UUID>) {
            store.remove(sheet.id());
        }
        return taken;
    }

    private Attempt<UUID> takeInstead(SignedIn supervisor, Sheet sheet, boolean instead) {
        SurgicalCase found = cases.lock(sheet.caseId()).orElseThrow(NotFound::new);
        UUID me = supervisor.personId();
        if (requests.asked(found.id(), sheet.traineeId(), me)) {
            return Attempt.refused(Refusal.at(FIELD, "hand-off.refusal.asked"));
        }
        Optional<Refusal> reason = scorers.against(found.programmeId(), sheet.traineeId(), me);
        if (reason.isPresent()) {
            return Attempt.refused(Refusal.at(FIELD, reason.get().messageKey()));
        }
        CaseFile.ScoreRequest request = queries.requests(found.id()).stream()
                .filter(one -> one.sheetId().equals(sheet.id()))
                .findFirst()
                .orElseThrow(NotFound::new);
        if (!instead) {
            return Attempt.refused(Refusal.at(
                    "instead",
                    "hand-off.refusal.instead",
                    request.scorer().name(),
                    request.trainee().name()));
        }
        return handOn.apply(supervisor, found, request, me, handOn.byCode())
                ? Attempt.done(sheet.id())
                : Attempt.refused(UNKNOWN);
    }

    private static boolean untouched(Sheet sheet) {
        return sheet.state() == SheetState.OPEN && sheet.lockVersion() == 0;
    }
}
