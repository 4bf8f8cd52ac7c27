package org.scrubline.signoff;

import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.scrubline.people.Person;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.Versions.Signature;
import org.springframework.stereotype.Service;

@Service
class StoredContests implements Contests {

    private final ContestReading reading;
    private final ContestDesk desk;
    private final ContestDecisions decisions;
    private final SignerCheck signers;

    StoredContests(ContestReading reading, ContestDesk desk, ContestDecisions decisions, SignerCheck signers) {
        this.reading = reading;
        this.desk = desk;
        this.decisions = decisions;
        this.signers = signers;
    }

    @Override
    public List<ContestFile> of(SignedIn who) {
        return reading.of(who);
    }

    @Override
    public ContestFile read(SignedIn who, UUID contestId) {
        return reading.read(who, contestId);
    }

    @Override
    public List<Person> reviewers(SignedIn director, UUID contestId) {
        return reading.reviewers(director, contestId);
    }

    @Override
    public Set<UUID> reviewersOf(UUID traineeId) {
        return reading.reviewersOf(traineeId);
    }

    @Override
    public List<RecordEvent> next(SignedIn who, ContestFile contest) {
        return reading.next(who, contest);
    }

    @Override
    public Attempt<Statement> open(SignedIn trainee, UUID recordId, List<String> steps, Signature signature) {
        desk.recognise(trainee, recordId);
        return signers.confirm(trainee, signature, spoken -> desk.open(trainee, recordId, steps, spoken));
    }

    @Override
    public Attempt<Statement> reply(SignedIn scorer, UUID contestId, Signature signature) {
        reading.read(scorer, contestId);
        return signers.confirm(scorer, signature, spoken -> desk.reply(scorer, contestId, spoken));
    }

    @Override
    public Attempt<Statement> nameReviewer(SignedIn director, UUID contestId, UUID reviewer, Signature signature) {
        reading.reviewers(director, contestId);
        return signers.confirm(director, signature, spoken -> desk.nameReviewer(director, contestId, reviewer, spoken));
    }

    @Override
    public Attempt<Statement> decide(SignedIn reviewer, UUID contestId, boolean upheld, Signature signature) {
        reading.read(reviewer, contestId);
        return signers.confirm(reviewer, signature, spoken -> decisions.decide(reviewer, contestId, upheld, spoken));
    }

    @Override
    public Attempt<Statement> withdraw(SignedIn trainee, UUID contestId, Signature signature) {
        reading.read(trainee, contestId);
        return signers.confirm(trainee, signature, spoken -> decisions.withdraw(trainee, contestId, spoken));
    }
}
