package org.scrubline.signoff;

import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.ContestFiling.Held;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Ends contests, once each. */
@Service
@Transactional
class ContestDecisions {

    private final ContestRules rules;
    private final ContestFiling filing;
    private final VersionDrafts drafts;

    ContestDecisions(ContestRules rules, ContestFiling filing, VersionDrafts drafts) {
        this.rules = rules;
        this.filing = filing;
        this.drafts = drafts;
    }

    /** Upheld, it is the reviewer who writes the next version; what the scorer was writing is dropped. */
    public Attempt<Statement> decide(SignedIn reviewer, UUID contestId, boolean upheld, Spoken spoken) {
        Held held = filing.hold(reviewer, contestId);
        ContestFile contest = held.contest();
        if (!rules.isReviewer(reviewer, contest)) {
            throw new NotFound();
        }
        RecordEvent kind = upheld ? RecordEvent.CONTEST_UPHELD : RecordEvent.CONTEST_NOT_UPHELD;
        String said = spoken.text();
        Optional<Attempt<Statement>> before = ContestFiling.before(reviewer, contest, kind, said);
        if (before.isPresent()) {
            return before.get();
        }
        Optional<Refusal> refusal = ContestFiling.againstEnded(contest)
                .or(() -> rules.againstReviewer(reviewer, contest))
                .or(() -> Statements.against("reason", said, Contests.LONGEST_TEXT));
        if (refusal.isPresent()) {
            return Attempt.refused(refusal.get());
        }
        if (upheld) {
            drafts.dropOpen(held.standing());
        }
        return Attempt.done(
                filing.add(reviewer, Role.SUPERVISOR, kind, contest, Said.answering(contest.opened(), spoken)));
    }

    public Attempt<Statement> withdraw(SignedIn trainee, UUID contestId, Spoken spoken) {
        ContestFile contest = filing.hold(trainee, contestId).contest();
        if (!ContestRules.is(trainee, contest.trainee())) {
            throw new NotFound();
        }
        String said = spoken.text();
        Optional<Attempt<Statement>> before =
                ContestFiling.before(trainee, contest, RecordEvent.CONTEST_WITHDRAWN, said);
        if (before.isPresent()) {
            return before.get();
        }
        Optional<Refusal> refusal =
                ContestFiling.againstEnded(contest).or(() -> FreeText.narrative("reason", said, Contests.LONGEST_TEXT));
        return refusal.map(Attempt::<Statement>refused)
                .orElseGet(() -> Attempt.done(filing.add(
                        trainee,
                        Role.TRAINEE,
                        RecordEvent.CONTEST_WITHDRAWN,
                        contest,
                        Said.answering(contest.opened(), spoken))));
    }
}
