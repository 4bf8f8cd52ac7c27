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
    private final FreshPassword password;

    StoredContests(ContestReading reading, ContestDesk desk, ContestDecisions decisions, FreshPassword password) {
        this.reading = reading;
        this.desk = desk;
        this.decisions = decisions;
        this.password = password;
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
        return password.confirm(
                trainee, signature.password(), () -> desk.open(trainee, recordId, steps, signature.text()));
    }

    @Override
    public Attempt<Statement> reply(SignedIn scorer, UUID contestId, Signature signature) {
        reading.read(scorer, contestId);
        return password.confirm(scorer, signature.password(), () -> desk.reply(scorer, contestId, signature.text()));
    }

    @Override
    public Attempt<Statement> nameReviewer(SignedIn director, UUID contestId, UUID reviewer, Signature signature) {
        reading.reviewers(director, contestId);
        return password.confirm(
                director,
                signature.password(),
                () -> desk.nameReviewer(director, contestId, reviewer, signature.text()));
    }

    @Override
    public Attempt<Statement> decide(SignedIn reviewer, UUID contestId, boolean upheld, Signature signature) {
        reading.read(reviewer, contestId);
        return password.confirm(
                reviewer, signature.password(), () -> decisions.decide(reviewer, contestId, upheld, signature.text()));
    }

    @Override
    public Attempt<Statement> withdraw(SignedIn trainee, UUID contestId, Signature signature) {
        reading.read(trainee, contestId);
        return password.confirm(
                trainee, signature.password(), () -> decisions.withdraw(trainee, contestId, signature.text()));
    }
}
