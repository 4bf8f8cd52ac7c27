package org.scrubline.signoff;

import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.people.Visitors;
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
@Transactional(readOnly = true)
class StoredSignedRecords implements SignedRecords {

    private final SignedSheetQueries sheets;
    private final SignedLineQueries lines;
    private final VersionQueries versions;
    private final RemarkStore remarks;
    private final Ledger ledger;
    private final CountersignAccess countersigners;
    private final Visitors visitors;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    StoredSignedRecords(
            SignedSheetQueries sheets,
            SignedLineQueries lines,
            VersionQueries versions,
            RemarkStore remarks,
            Ledger ledger,
            CountersignAccess countersigners,
            Visitors visitors,
            ApplicationEventPublisher events,
            Clock clock) {
        this.sheets = sheets;
        this.lines = lines;
        this.versions = versions;
        this.remarks = remarks;
        this.ledger = ledger;
        this.countersigners = countersigners;
        this.visitors = visitors;
        this.events = events;
        this.clock = clock;
    }

    @Override
    public SignedSheet read(SignedIn who, UUID id) {
        return readable(who, sheets.byId(id));
    }

    @Override
    public SignedSheet readSheet(SignedIn who, UUID sheetId) {
        return readable(who, sheets.newest(sheetId));
    }

    private SignedSheet readable(SignedIn who, Optional<SignedSheet> signed) {
        return signed.filter(sheet -> sheet.traineeId().equals(who.personId())
                        || who.has(Role.DIRECTOR, sheet.programmeId())
                        || who.has(Role.COMMITTEE_MEMBER, sheet.programmeId())
                        || countersigns(who, sheet)
                        || versions.involved(who.personId(), sheet.sheetId())
                        || visitors.toRecord(who, sheet.id(), sheet.traineeId(), sheet.programmeId())
                                .isPresent())
                .orElseThrow(NotFound::new);
    }

    /** Who may countersign the newest version may compare it with those before. */
    private boolean countersigns(SignedIn who, SignedSheet version) {
        return countersigners.mayRead(who, version)
                || sheets.newest(version.sheetId())
                        .filter(newest -> countersigners.mayRead(who, newest))
                        .isPresent();
    }

    @Override
    public boolean signed(SignedIn who, UUID sheetId) {
        return lines.signed(who.personId(), sheetId);
    }

    @Override
    public List<SignedLine> signedBy(UUID signerId) {
        return lines.signedBy(signerId);
    }

    @Override
    public List<SignedLine> voidSignedBy(UUID signerId) {
        return lines.voidSignedBy(signerId);
    }

    @Override
    public List<SignedLine> voidAbout(UUID traineeId) {
        return lines.voidAbout(traineeId);
    }

    @Override
    public List<SignedLine> about(UUID traineeId) {
        return lines.about(traineeId);
    }

    @Override
    public List<Remark> remarks(UUID sheetId) {
        return remarks.ofSheet(sheetId);
    }

    @Override
    @Transactional
    public Attempt<Remark> remark(SignedIn trainee, UUID id, String body) {
        SignedSheet signed = read(trainee, id);
        if (!signed.traineeId().equals(trainee.personId())) {
            throw new NotFound();
        }
        String text = FreeText.tidy(body);
        if (text.isEmpty()) {
            return Attempt.refused(Refusal.at("body", "signoff.refusal.remark-empty"));
        }
        return FreeText.narrative("body", text, REMARK_LENGTH)
                .map(Attempt::<Remark>refused)
                .orElseGet(() -> Attempt.done(keep(trainee, signed, text)));
    }

    private Remark keep(SignedIn trainee, SignedSheet signed, String text) {
        return remarks.ofSheet(signed.sheetId()).stream()
                .filter(earlier -> earlier.body().equals(text))
                .findFirst()
                .orElseGet(() -> {
                    Remark remark = new Remark(
                            UUID.randomUUID(),
                            trainee.printedName(),
                            text,
                            clock.instant().truncatedTo(ChronoUnit.MICROS));
                    remarks.insert(signed.sheetId(), trainee.personId(), remark);
                    events.publishEvent(RemarkWritten.of(signed, remark));
                    ledger.append(LeafKind.REMARK, remark.id());
                    return remark;
                });
    }
}
