package org.scrubline.casework;

import java.util.Optional;
import java.util.UUID;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.springframework.stereotype.Component;

/** Who may be asked to score whom: a supervisor of the programme, never oneself, never in a declared conflict. */
@Component
class ScorerRule {

    static final String FIELD = "supervisor";

    private final People people;

    ScorerRule(People people) {
        this.people = people;
    }

    /** Why this supervisor cannot score this trainee, if so. */
    Optional<Refusal> against(UUID programme, UUID trainee, UUID supervisor) {
        if (supervisor.equals(trainee)) {
            return Optional.of(Refusal.at(FIELD, "refusal.case.supervisor.self"));
        }
        if (!holds(programme, supervisor, Role.SUPERVISOR)) {
            return Optional.of(Refusal.at(FIELD, "refusal.case.supervisor.unknown"));
        }
        if (people.inConflict(trainee, supervisor)) {
            return Optional.of(Refusal.at(FIELD, "refusal.case.supervisor.conflict"));
        }
        return Optional.empty();
    }

    /** Printed name of a person who may score. */
    String name(UUID supervisor) {
        return people.person(supervisor).map(Person::printedName).orElse("");
    }

    boolean holds(UUID programme, UUID person, Role role) {
        return people.holding(programme, role).stream()
                .anyMatch(holder -> holder.id().equals(person));
    }
}
