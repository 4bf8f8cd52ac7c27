package org.scrubline.signoff;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

/** What a person may do with a signed sheet as it stands. */
@Component
class VersionRights {

    private final People people;

    VersionRights(People people) {
        this.people = people;
    }

    Set<RecordEvent> of(SignedIn who, Standing standing) {
        Set<RecordEvent> may = EnumSet.noneOf(RecordEvent.class);
        if (standing.isWriting(who)) {
            may.add(RecordEvent.VERSION_DROPPED);
        } else if (standing.mayWrite(who) && standing.againstVersion().isEmpty()) {
            may.add(RecordEvent.VERSION_OPENED);
        }
        if (standing.mayVoid(who) && standing.againstVoidRequest().isEmpty()) {
            may.add(RecordEvent.VOID_ASKED);
        }
        if (standing.pendingVoid()
                .filter(waiting -> mayDecide(who, standing, waiting))
                .isPresent()) {
            may.add(RecordEvent.VOID_CONFIRMED);
        }
        if (standing.isTrainee(who) && standing.againstContest().isEmpty()) {
            may.add(RecordEvent.CONTEST_OPENED);
        }
        if (!delegates(who, standing).isEmpty()) {
            may.add(RecordEvent.DELEGATE_NAMED);
        }
        return may;
    }

    /** The second person: never the one who asked, and nobody with a declared conflict with the trainee. */
    boolean mayDecide(SignedIn who, Standing standing, VoidFile waiting) {
        return standing.mayVoid(who)
                && !waiting.request().by(who.personId())
                && !people.inConflict(who.personId(), standing.newest().traineeId());
    }

    /** Whom this director may name, once whoever would sign supervises in the programme no more. */
    List<Person> delegates(SignedIn who, Standing standing) {
        UUID programme = standing.newest().programmeId();
        List<Person> supervisors = people.holding(programme, Role.SUPERVISOR);
        boolean left = supervisors.stream().noneMatch(person -> standing.isAuthority(person.id()));
        if (!left || standing.isVoid() || !standing.directs(who) || standing.isTrainee(who)) {
            return List.of();
        }
        UUID trainee = standing.newest().traineeId();
        return supervisors.stream()
                .filter(person -> !person.id().equals(who.personId()))
                .filter(person -> !person.id().equals(trainee) && !people.inConflict(person.id(), trainee))
                .toList();
    }

    /** Whether this person has the role in the programme at this moment, whatever the session said. */
    boolean holds(UUID person, UUID programme, Role role) {
        return people.holding(programme, role).stream().anyMatch(one -> one.id().equals(person));
    }
}
