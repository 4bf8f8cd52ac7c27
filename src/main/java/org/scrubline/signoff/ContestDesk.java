package org.scrubline.signoff;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.ledger.LeafKind;
import org.scrubline.people.Person;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Takes a contest as far as its reviewer; each statement in one transaction that holds the sheet. */
@Service
@Transactional
class ContestDesk {

    private final SignedRecords records;
    private final Standings standings;
    private final ContestRules rules;
    private final ContestFiling filing;
    private final Statements statements;
    private final StatementStore store;
    private final SignedEvidence evidence;

    ContestDesk(
            SignedRecords records,
            Standings standings,
            ContestRules rules,
            ContestFiling filing,
            Statements statements,
            StatementStore store,
            SignedEvidence evidence) {
        this.records = records;
        this.standings = standings;
        this.rules = rules;
        this.filing = filing;
        this.statements = statements;
        this.store = store;
        this.evidence = evidence;
    }

    /** Answers {@code NotFound} to anyone but the trainee. */
    @Transactional(readOnly = true)
    public void recognise(SignedIn trainee, UUID recordId) {
        own(trainee, standings.of(records.read(trainee, recordId).sheetId()));
    }

    public Attempt<Statement> open(SignedIn trainee, UUID recordId, List<String> steps, Spoken spoken) {
        Standing standing =
                own(trainee, standings.held(records.read(trainee, recordId).sheetId()));
        String why = spoken.text();
        Optional<Statement> before = standing.contests().stream()
                .filter(ContestFile::open)
                .map(ContestFile::opened)
                .filter(opened -> opened.content().text().equals(why)
                        && opened.content().steps().equals(steps))
                .findFirst();
        if (before.isPresent()) {
            return Attempt.done(before.get());
        }
        Optional<Refusal> refusal = standing.againstContest()
                .or(() -> againstSteps(standing.newest(), steps))
                .or(() -> Statements.against("reason", why, Contests.LONGEST_TEXT));
        return refusal.map(Attempt::<Statement>refused)
                .orElseGet(() -> Attempt.done(keep(trainee, standing, Said.steps(steps, spoken))));
    }

    private Statement keep(SignedIn trainee, Standing standing, Said said) {
        Statement opened = statements.write(trainee, Role.TRAINEE, RecordEvent.CONTEST_OPENED, standing.newest(), said);
        store.contest(
                opened, opened.content().signedAt().plus(standing.settings().contestTerm()));
        evidence.fix(LeafKind.CONTEST, opened.id(), said.how());
        return opened;
    }

    private static Optional<Refusal> againstSteps(SignedSheet signed, List<String> steps) {
        List<String> known =
                signed.steps().stream().map(SignedSheet.SignedStep::stepCode).toList();
        return known.containsAll(steps) ? Optional.empty() : Optional.of(Refusal.at("steps", "signoff.refusal.steps"));
    }

    private static Standing own(SignedIn trainee, Standing standing) {
        if (!standing.isTrainee(trainee)) {
            throw new NotFound();
        }
        return standing;
    }

    public Attempt<Statement> reply(SignedIn scorer, UUID contestId, Spoken spoken) {
        ContestFile contest = filing.hold(scorer, contestId).contest();
        if (!rules.mayReply(scorer, contest)) {
            throw new NotFound();
        }
        return ContestFiling.before(scorer, contest, RecordEvent.CONTEST_REPLIED, spoken.text())
                .orElseGet(() -> firstReply(scorer, contest, spoken));
    }

    private Attempt<Statement> firstReply(SignedIn scorer, ContestFile contest, Spoken spoken) {
        Optional<Refusal> refusal = ContestFiling.againstEnded(contest)
                .or(() -> againstReply(contest))
                .or(() -> Statements.against("reason", spoken.text(), Contests.LONGEST_TEXT));
        return refusal.map(Attempt::<Statement>refused)
                .orElseGet(() -> Attempt.done(filing.add(
                        scorer,
                        Role.SUPERVISOR,
                        RecordEvent.CONTEST_REPLIED,
                        contest,
                        Said.answering(contest.opened(), spoken))));
    }

    private static Optional<Refusal> againstReply(ContestFile contest) {
        return contest.state() == ContestState.OPEN
                ? Optional.empty()
                : Optional.of(Refusal.of("signoff.refusal.replied"));
    }

    public Attempt<Statement> nameReviewer(SignedIn director, UUID contestId, UUID reviewer, Spoken spoken) {
        ContestFile contest = filing.hold(director, contestId).contest();
        if (!rules.mayName(director, contest)) {
            throw new NotFound();
        }
        if (contest.open()
                && contest.reviewer()
                        .filter(named -> named.id().equals(reviewer))
                        .isPresent()) {
            return Attempt.done(contest.said(RecordEvent.REVIEWER_NAMED).orElseThrow());
        }
        Optional<Person> named = rules.reviewers(director, contest).stream()
                .filter(person -> person.id().equals(reviewer))
                .findFirst();
        Optional<Refusal> refusal = ContestFiling.againstEnded(contest)
                .or(() -> rules.againstNaming(director, contest))
                .or(() -> FreeText.narrative("reason", spoken.text(), Contests.LONGEST_TEXT));
        if (refusal.isPresent() || named.isEmpty()) {
            return Attempt.refused(refusal.orElse(Refusal.at("reviewer", "signoff.refusal.reviewer-choice")));
        }
        Said naming = Said.answering(contest.opened(), spoken).naming(named.get());
        return Attempt.done(filing.add(director, Role.DIRECTOR, RecordEvent.REVIEWER_NAMED, contest, naming));
    }
}
