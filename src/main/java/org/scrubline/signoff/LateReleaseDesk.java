package org.scrubline.signoff;

import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.ledger.LeafKind;
import org.scrubline.people.Settings;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Releasing late sheets, one transaction each. Whoever calls has recognised the director. */
@Service
@Transactional
class LateReleaseDesk {

    private final LateReleaseStore store;
    private final Settings settings;
    private final SigningAuthority authority;
    private final SignedEvidence evidence;
    private final Clock clock;

    LateReleaseDesk(
            LateReleaseStore store,
            Settings settings,
            SigningAuthority authority,
            SignedEvidence evidence,
            Clock clock) {
        this.store = store;
        this.settings = settings;
        this.authority = authority;
        this.evidence = evidence;
        this.clock = clock;
    }

    @Transactional(readOnly = true)
    public List<ClosedSheet> closed(SignedIn director) {
        return director.grants().stream()
                .filter(grant -> grant.role() == Role.DIRECTOR)
                .map(SignedIn.Grant::programmeId)
                .flatMap(programme ->
                        store
                                .closed(
                                        programme,
                                        clock.instant()
                                                .minus(settings.of(programme).closedAfter()))
                                .stream())
                .sorted(Comparator.comparing(ClosedSheet::caseEndedAt))
                .toList();
    }

    @Transactional(readOnly = true)
    public ClosedSheet closed(SignedIn director, UUID sheetId) {
        return closed(director).stream()
                .filter(sheet -> sheet.sheetId().equals(sheetId))
                .findFirst()
                .orElseThrow(NotFound::new);
    }

    /** Refuses a reason that cannot be kept, before anyone is asked for a password. */
    Optional<Refusal> against(String reason) {
        return reason.isEmpty()
                ? Optional.of(Refusal.at("reason", "signoff.refusal.release-reason"))
                : FreeText.narrative("reason", reason, LateReleases.REASON_LENGTH);
    }

    /** Of two at once one inserts; the other waits for it in the unique key and answers with it. */
    public Attempt<LateRelease> release(SignedIn director, UUID sheetId, Spoken spoken) {
        ClosedSheet sheet = closed(director, sheetId);
        Optional<Refusal> barred = barred(director, sheet);
        if (barred.isPresent()) {
            return Attempt.refused(barred.get());
        }
        LateRelease release = new LateRelease(
                UUID.randomUUID(),
                sheetId,
                director.personId(),
                director.printedName(),
                Role.DIRECTOR.name(),
                spoken.text(),
                clock.instant().truncatedTo(ChronoUnit.MILLIS),
                sheet.zone(),
                spoken.how().used());
        if (store.insert(release)) {
            evidence.fix(LeafKind.LATE_RELEASE, release.id(), spoken.how());
        }
        return Attempt.done(store.of(sheetId).orElseThrow());
    }

    private Optional<Refusal> barred(SignedIn director, ClosedSheet sheet) {
        return authority.holds(sheet.programmeId(), director.personId(), Role.DIRECTOR)
                ? authority.standing(director.personId())
                : Optional.of(Refusal.at(Signing.AUTHORITY, "signoff.refusal.no-director"));
    }
}
