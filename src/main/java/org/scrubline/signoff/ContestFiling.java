package org.scrubline.signoff;

import java.util.Optional;
import java.util.UUID;
import org.scrubline.ledger.LeafKind;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

/** Adds a step to a contest that is held. */
@Component
class ContestFiling {

    private final ContestReading reading;
    private final Standings standings;
    private final SignedSheetQueries signed;
    private final Statements statements;
    private final StatementStore store;
    private final SignedEvidence evidence;

    ContestFiling(
            ContestReading reading,
            Standings standings,
            SignedSheetQueries signed,
            Statements statements,
            StatementStore store,
            SignedEvidence evidence) {
        this.reading = reading;
        this.standings = standings;
        this.signed = signed;
        this.statements = statements;
        this.store = store;
        this.evidence = evidence;
    }

    /** A contest that nobody else changes until the transaction ends, and the sheet it is about. */
    record Held(ContestFile contest, Standing standing) {}

    Held hold(SignedIn who, UUID contestId) {
        Standing standing = standings.held(reading.read(who, contestId).sheetId());
        return new Held(reading.read(who, contestId), standing);
    }

    Statement add(SignedIn who, Role role, RecordEvent kind, ContestFile contest, Said said) {
        SignedSheet contested = signed.byId(contest.recordId()).orElseThrow(NotFound::new);
        Statement step = statements.write(who, role, kind, contested, said);
        store.contestStep(contest.id(), contest.steps().size() + 1, step);
        evidence.fix(LeafKind.CONTEST_STEP, step.id(), said.how());
        return step;
    }

    /** The same statement of the same person, sent again. */
    static Optional<Attempt<Statement>> before(SignedIn who, ContestFile contest, RecordEvent kind, String text) {
        return contest.said(kind)
                .filter(said -> said.by(who.personId()) && said.content().text().equals(text))
                .map(Attempt::done);
    }

    static Optional<Refusal> againstEnded(ContestFile contest) {
        return contest.open() ? Optional.empty() : Optional.of(Refusal.of("signoff.refusal.contest-ended"));
    }
}
