package org.scrubline.committee;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.people.Settings;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.springframework.stereotype.Component;

/** What stands against planning or changing a meeting as asked. */
@Component
class MeetingRules {

    private static final Duration LONGEST_AHEAD = Duration.ofDays(366);
    private static final Duration LATEST = Duration.ofDays(1);

    private final People people;
    private final Settings settings;
    private final Clock clock;

    MeetingRules(People people, Settings settings, Clock clock) {
        this.people = people;
        this.settings = settings;
        this.clock = clock;
    }

    List<Person> invitable(UUID programme) {
        return Stream.of(Role.DIRECTOR, Role.COMMITTEE_MEMBER)
                .flatMap(role -> people.holding(programme, role).stream())
                .distinct()
                .sorted(Comparator.comparing(Person::printedName).thenComparing(Person::id))
                .toList();
    }

    List<Person> trainees(UUID programme) {
        return people.holding(programme, Role.TRAINEE);
    }

    List<Refusal> against(UUID programme, MeetingPlan plan) {
        List<Refusal> reasons = new ArrayList<>();
        if (!inReach(plan.at())) {
            reasons.add(Refusal.at("at", "committee.refusal.at", LONGEST_AHEAD.toDays()));
        }
        int quorum = settings.of(programme).quorum();
        if (plan.members().size() < quorum) {
            reasons.add(Refusal.at("members", "committee.refusal.members", quorum));
        }
        if (plan.chair() == null || !plan.members().contains(plan.chair())) {
            reasons.add(Refusal.at("chair", "committee.refusal.chair"));
        }
        if (plan.trainees().isEmpty()) {
            reasons.add(Refusal.at("trainees", "committee.refusal.trainees"));
        }
        reasons.addAll(strangers(programme, plan.members(), plan.trainees()));
        return reasons;
    }

    private boolean inReach(@Nullable Instant at) {
        Instant now = clock.instant();
        return at != null && !at.isBefore(now.minus(LATEST)) && !at.isAfter(now.plus(LONGEST_AHEAD));
    }

    /** Who holds no role that fits; somebody who is both decides about others only, which voting looks after. */
    List<Refusal> strangers(UUID programme, Collection<UUID> members, Collection<UUID> trainees) {
        List<Refusal> reasons = new ArrayList<>();
        if (!ids(invitable(programme)).containsAll(members)) {
            reasons.add(Refusal.at("members", "committee.refusal.member-role"));
        }
        if (!ids(trainees(programme)).containsAll(trainees)) {
            reasons.add(Refusal.at("trainees", "committee.refusal.trainee-role"));
        }
        return reasons;
    }

    private static Set<UUID> ids(List<Person> persons) {
        return persons.stream().map(Person::id).collect(Collectors.toSet());
    }
}
