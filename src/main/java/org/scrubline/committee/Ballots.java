package org.scrubline.committee;

import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scrubline.committee.Ballot.Bar;
import org.scrubline.committee.pack.PackContent;
import org.scrubline.people.People;
import org.scrubline.people.ProgrammeSettings;
import org.scrubline.people.Settings;
import org.scrubline.signoff.Contests;
import org.springframework.stereotype.Component;

/** Works out who may vote on a trainee, from what is declared now and what the frozen evidence says. */
@Component
class Ballots {

    private final People people;
    private final Settings settings;
    private final Contests contests;

    Ballots(People people, Settings settings, Contests contests) {
        this.people = people;
        this.settings = settings;
        this.contests = contests;
    }

    Ballot of(Meeting meeting, PackContent pack) {
        ProgrammeSettings numbers = settings.of(meeting.programmeId());
        UUID trainee = pack.trainee().id();
        Set<UUID> reviewers = contests.reviewersOf(trainee);
        Map<UUID, Integer> scored = pack.scorers().stream()
                .collect(Collectors.toMap(PackContent.ScorerLine::id, PackContent.ScorerLine::records));
        return new Ballot(
                numbers.quorum(),
                meeting.members().stream()
                        .map(member -> {
                            UUID person = member.person().id();
                            int records = scored.getOrDefault(person, 0);
                            Bar bar = reviewers.contains(person) && !person.equals(trainee)
                                    ? Bar.REVIEWED
                                    : bar(meeting, person, trainee);
                            boolean scorer = bar == null && records > 0 && !numbers.scorersVote();
                            return new Ballot.Voter(
                                    person,
                                    member.person().printedName(),
                                    member.present(),
                                    scorer ? Bar.SCORED : bar,
                                    records);
                        })
                        .toList());
    }

    private @Nullable Bar bar(Meeting meeting, UUID person, UUID trainee) {
        if (person.equals(trainee)) {
            return Bar.SELF;
        }
        if (meeting.conflict(person, trainee).isPresent()) {
            return Bar.DECLARED;
        }
        return people.inConflict(person, trainee) ? Bar.CONFLICT : null;
    }
}
