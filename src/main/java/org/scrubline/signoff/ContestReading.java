package org.scrubline.signoff;

import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.scrubline.people.Person;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Reads contests for those who may. */
@Service
@Transactional(readOnly = true)
class ContestReading {

    private final ContestQueries queries;
    private final ContestRules rules;

    ContestReading(ContestQueries queries, ContestRules rules) {
        this.queries = queries;
        this.rules = rules;
    }

    public List<ContestFile> of(SignedIn who) {
        List<UUID> led = who.grants().stream()
                .filter(grant -> grant.role() == Role.DIRECTOR || grant.role() == Role.COMMITTEE_MEMBER)
                .map(SignedIn.Grant::programmeId)
                .toList();
        return queries.find(ContestQueries.Filter.person(who.personId(), led)).stream()
                .filter(contest -> rules.mayRead(who, contest))
                .toList();
    }

    public ContestFile read(SignedIn who, UUID contestId) {
        return queries.find(ContestQueries.Filter.id(contestId)).stream()
                .filter(contest -> rules.mayRead(who, contest))
                .findFirst()
                .orElseThrow(NotFound::new);
    }

    /** The trainee is the only one who can take a contest back; everyone else who ended one reviewed it. */
    public Set<UUID> reviewersOf(UUID traineeId) {
        return queries.find(ContestQueries.Filter.person(traineeId, List.of())).stream()
                .filter(contest -> contest.trainee().id().equals(traineeId))
                .filter(contest -> contest.state() != ContestState.WITHDRAWN)
                .flatMap(contest -> contest.end().stream())
                .map(end -> end.content().signer().id())
                .collect(Collectors.toSet());
    }

    public List<RecordEvent> next(SignedIn who, ContestFile contest) {
        return rules.next(who, contest);
    }

    public List<Person> reviewers(SignedIn director, UUID contestId) {
        ContestFile contest = read(director, contestId);
        if (!rules.mayName(director, contest)) {
            throw new NotFound();
        }
        return rules.reviewers(director, contest);
    }
}
