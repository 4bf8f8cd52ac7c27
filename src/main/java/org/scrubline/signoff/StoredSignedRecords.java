package org.scrubline.signoff;

import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional(readOnly = true)
class StoredSignedRecords implements SignedRecords {

    private final SignedSheetQueries sheets;
    private final SignedLineQueries lines;
    private final RemarkStore remarks;
    private final Ledger ledger;
    private final CountersignAccess countersigners;
    private final Clock clock;

    StoredSignedRecords(
            SignedSheetQueries sheets,
            SignedLineQueries lines,
            RemarkStore remarks,
            Ledger ledger,
            CountersignAccess countersigners,
            Clock clock) {
        this.countersigners = countersigners;
        this.sheets = sheets;
        this.lines = lines;
        this.remarks = remarks;
        this.ledger = ledger;
        this.clock = clock;
    }

    @Override
    public SignedSheet read(SignedIn who, UUID id) {
        return readable(who, sheets.byId(id));
    }

    @Override
    public SignedSheet readSheet(SignedIn who, UUID sheetId) {
        return readable(who, sheets.ofSheet(sheetId));
    }

    private SignedSheet readable(SignedIn who, Optional<SignedSheet> signed) {
        return signed.filter(sheet -> sheet.traineeId().equals(who.personId())
                        || sheet.signerId().equals(who.personId())
                        || who.has(Role.DIRECTOR, sheet.programmeId())
                        || who.has(Role.COMMITTEE_MEMBER, sheet.programmeId())
                        || countersigners.mayRead(who, sheet))
                .orElseThrow(NotFound::new);
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
        return FreeText.check("body", text, REMARK_LENGTH)
                .map(Attempt::<Remark>refused)
                .orElseGet(() -> Attempt.done(keep(trainee, signed.sheetId(), text)));
    }

    private Remark keep(SignedIn trainee, UUID sheetId, String text) {
        return remarks.ofSheet(sheetId).stream()
                .filter(earlier -> earlier.body().equals(text))
                .findFirst()
                .orElseGet(() -> {
                    Remark remark = new Remark(
                            UUID.randomUUID(),
                            trainee.printedName(),
                            text,
                            clock.instant().truncatedTo(ChronoUnit.MICROS));
                    remarks.insert(sheetId, trainee.personId(), remark);
                    ledger.append(LeafKind.REMARK, remark.id());
                    return remark;
                });
    }
}
