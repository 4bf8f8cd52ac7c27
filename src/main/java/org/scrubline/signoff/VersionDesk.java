package org.scrubline.signoff;

import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.casework.Reopening;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.SheetState;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Opens and drops new versions; each change in one transaction that holds the sheet. */
@Service
@Transactional
class VersionDesk {

    private final SignedRecords records;
    private final SignedSheetQueries signed;
    private final Standings standings;
    private final VersionRights rights;
    private final VersionDrafts drafts;
    private final Delegations delegations;
    private final People people;
    private final Clock clock;

    VersionDesk(
            SignedRecords records,
            SignedSheetQueries signed,
            Standings standings,
            VersionRights rights,
            VersionDrafts drafts,
            Delegations delegations,
            People people,
            Clock clock) {
        this.records = records;
        this.signed = signed;
        this.standings = standings;
        this.rights = rights;
        this.drafts = drafts;
        this.delegations = delegations;
        this.people = people;
        this.clock = clock;
    }

    @Transactional(readOnly = true)
    public RecordHistory history(SignedIn who, UUID recordId) {
        Standing standing = standings.of(records.read(who, recordId).sheetId());
        Optional<Reopening> open = Optional.ofNullable(standing.sheet().reopening());
        return new RecordHistory(
                signed.versions(standing.sheet().id()),
                standing.voids(),
                standing.contests(),
                delegations.of(standing.sheet().id()),
                open,
                open.flatMap(draft -> people.person(draft.editorId()))
                        .map(Person::printedName)
                        .orElse(""),
                standing.contestableUntil(),
                rights.of(who, standing));
    }

    public Attempt<UUID> open(SignedIn who, UUID recordId, String reason) {
        Standing standing = standings.held(records.read(who, recordId).sheetId());
        if (!mayWrite(who, standing)) {
            throw new NotFound();
        }
        String why = FreeText.tidy(reason);
        Optional<Refusal> refusal = standing.againstVersion()
                .or(() -> againstAnother(standing.sheet(), why))
                .or(() -> Statements.against("reason", why, Versions.LONGEST_REASON));
        if (refusal.isPresent()) {
            return Attempt.refused(refusal.get());
        }
        if (standing.sheet().state() == SheetState.SIGNED) {
            drafts.open(
                    standing,
                    new Reopening(
                            standing.newest().versionNo() + 1,
                            who.personId(),
                            why,
                            clock.instant().truncatedTo(ChronoUnit.MICROS)));
        }
        return Attempt.done(standing.sheet().id());
    }

    private boolean mayWrite(SignedIn who, Standing standing) {
        return standing.mayWrite(who)
                && rights.holds(who.personId(), standing.newest().programmeId(), Role.SUPERVISOR);
    }

    /** A second reason would be lost beside the first. */
    private static Optional<Refusal> againstAnother(Sheet sheet, String reason) {
        return Optional.ofNullable(sheet.reopening())
                .filter(open -> !open.reason().equals(reason))
                .map(open -> Refusal.of("signoff.refusal.version-open", open.versionNo()));
    }

    public void drop(SignedIn who, UUID recordId) {
        Standing standing = standings.held(records.read(who, recordId).sheetId());
        if (standing.isWriting(who)) {
            drafts.drop(standing);
        } else if (!standing.mayWrite(who)) {
            throw new NotFound();
        }
    }

    @Transactional(readOnly = true)
    public List<Person> delegates(SignedIn director, UUID recordId) {
        Standing standing = standings.of(records.read(director, recordId).sheetId());
        if (!standing.directs(director) || standing.isTrainee(director)) {
            throw new NotFound();
        }
        return rights.delegates(director, standing);
    }

    public Attempt<Statement> nameDelegate(SignedIn director, UUID recordId, UUID delegate, Spoken spoken) {
        Standing standing = standings.held(records.read(director, recordId).sheetId());
        Optional<Person> named = rights.delegates(director, standing).stream()
                .filter(person -> person.id().equals(delegate))
                .findFirst();
        if (named.isEmpty()) {
            return delegations
                    .same(standing, delegate, spoken.text())
                    .map(Attempt::done)
                    .orElseGet(() -> Attempt.refused(Refusal.at("delegate", "signoff.refusal.delegate")));
        }
        Optional<Refusal> refusal = Statements.against("reason", spoken.text(), Versions.LONGEST_REASON);
        if (refusal.isPresent()) {
            return Attempt.refused(refusal.get());
        }
        drafts.dropOpen(standing);
        return Attempt.done(delegations.name(director, standing, named.get(), spoken));
    }
}
