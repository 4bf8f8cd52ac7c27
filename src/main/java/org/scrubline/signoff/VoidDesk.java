package org.scrubline.signoff;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.ledger.LeafKind;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Keeps void requests and decisions, each in one transaction that holds the sheet. */
@Service
@Transactional
class VoidDesk {

    private final SignedRecords records;
    private final SignedLineQueries lines;
    private final Standings standings;
    private final VersionRights rights;
    private final VersionDrafts drafts;
    private final Statements statements;
    private final StatementStore store;
    private final SignedEvidence evidence;

    VoidDesk(
            SignedRecords records,
            SignedLineQueries lines,
            Standings standings,
            VersionRights rights,
            VersionDrafts drafts,
            Statements statements,
            StatementStore store,
            SignedEvidence evidence) {
        this.records = records;
        this.lines = lines;
        this.standings = standings;
        this.rights = rights;
        this.drafts = drafts;
        this.statements = statements;
        this.store = store;
        this.evidence = evidence;
    }

    /** Answers {@code NotFound} to anyone who has no say in it. */
    @Transactional(readOnly = true)
    public void recognise(SignedIn who, UUID recordId) {
        mine(who, standings.of(records.read(who, recordId).sheetId()));
    }

    public Attempt<Statement> ask(SignedIn who, UUID recordId, VoidGround ground, Spoken spoken) {
        Standing standing = mine(who, standings.held(records.read(who, recordId).sheetId()));
        String why = spoken.text();
        Optional<Statement> before = standing.pendingVoid()
                .map(VoidFile::request)
                .filter(asked -> asked.by(who.personId())
                        && asked.content().ground() == ground
                        && asked.content().text().equals(why));
        if (before.isPresent()) {
            return Attempt.done(before.get());
        }
        Optional<Refusal> refusal =
                standing.againstVoidRequest().or(() -> Statements.against("reason", why, Versions.LONGEST_REASON));
        if (refusal.isPresent()) {
            return Attempt.refused(refusal.get());
        }
        Statement asked = statements.write(
                who, standing.voidRole(who), RecordEvent.VOID_ASKED, standing.newest(), Said.ground(ground, spoken));
        store.voidRequest(asked);
        evidence.fix(LeafKind.VOID_REQUEST, asked.id(), spoken.how());
        return Attempt.done(asked);
    }

    public Attempt<Statement> decide(SignedIn who, UUID recordId, boolean confirm, Spoken spoken) {
        Standing standing = mine(who, standings.held(records.read(who, recordId).sheetId()));
        RecordEvent kind = confirm ? RecordEvent.VOID_CONFIRMED : RecordEvent.VOID_DECLINED;
        Optional<VoidFile> waiting = standing.pendingVoid();
        if (waiting.isEmpty()) {
            return before(standing, who, kind, spoken.text());
        }
        if (!rights.mayDecide(who, standing, waiting.get())) {
            return Attempt.refused(Refusal.of("signoff.refusal.void-second"));
        }
        String why = spoken.text();
        Optional<Refusal> refusal = confirm
                ? FreeText.narrative("reason", why, Versions.LONGEST_REASON)
                : Statements.against("reason", why, Versions.LONGEST_REASON);
        return refusal.map(Attempt::<Statement>refused)
                .orElseGet(() -> Attempt.done(keep(who, standing, waiting.get(), kind, spoken)));
    }

    private Statement keep(SignedIn who, Standing standing, VoidFile waiting, RecordEvent kind, Spoken spoken) {
        Role role = standing.voidRole(who);
        Statement decided =
                statements.write(who, role, kind, standing.newest(), Said.answering(waiting.request(), spoken));
        store.voidDecision(waiting.request().id(), decided);
        if (kind == RecordEvent.VOID_CONFIRMED) {
            drafts.markVoid(standing);
        }
        evidence.fix(LeafKind.VOID_DECISION, decided.id(), spoken.how());
        return decided;
    }

    /** The same decision of the same person, sent again. */
    private static Attempt<Statement> before(Standing standing, SignedIn who, RecordEvent kind, String text) {
        return standing.voids().stream()
                .reduce((older, newer) -> newer)
                .flatMap(VoidFile::decision)
                .filter(decided -> decided.by(who.personId())
                        && decided.kind() == kind
                        && decided.content().text().equals(text))
                .map(Attempt::done)
                .orElseGet(() -> Attempt.refused(Refusal.of("signoff.refusal.void-decided")));
    }

    @Transactional(readOnly = true)
    public List<SignedLine> waiting(SignedIn who) {
        List<UUID> directed = who.grants().stream()
                .filter(grant -> grant.role() == Role.DIRECTOR)
                .map(SignedIn.Grant::programmeId)
                .toList();
        return lines.voidsToDecide(who.personId(), directed);
    }

    /** A director must be one at this moment, whatever the session said. */
    private Standing mine(SignedIn who, Standing standing) {
        boolean still = standing.voidRole(who) == Role.SUPERVISOR
                || rights.holds(who.personId(), standing.newest().programmeId(), Role.DIRECTOR);
        if (!standing.mayVoid(who) || !still) {
            throw new NotFound();
        }
        return standing;
    }
}
