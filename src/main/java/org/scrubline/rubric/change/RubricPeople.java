package org.scrubline.rubric.change;

import java.time.ZoneId;
import java.util.List;
import java.util.UUID;
import org.scrubline.people.People;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

/** Who may do what with the organisation's rubrics; a role in any of its programmes counts. */
@Component
public class RubricPeople {

    private static final List<Role> READERS = List.of(Role.DIRECTOR, Role.SUPERVISOR, Role.COMMITTEE_MEMBER);

    private final People people;

    RubricPeople(People people) {
        this.people = people;
    }

    public static boolean directs(SignedIn who) {
        return who.has(Role.DIRECTOR);
    }

    /** Whether somebody sees drafts and may say what they think of them. */
    public static boolean reads(SignedIn who) {
        return READERS.stream().anyMatch(who::has);
    }

    /**
     * Directors, supervisors and committee members see drafts and may say what they think of them.
     *
     * @throws NotFound for everyone else
     */
    public static void requireReader(SignedIn who) {
        if (!reads(who)) {
            throw new NotFound();
        }
    }

    /**
     * Directors of any programme write, publish and ask.
     *
     * @throws NotFound for everyone else
     */
    public static void requireDirector(SignedIn who) {
        if (!directs(who)) {
            throw new NotFound();
        }
    }

    /** Where a director's days begin: the zone of the first programme by id that the person directs. */
    public ZoneId zone(SignedIn director) {
        UUID programme = programme(director);
        return people.programme(programme).zone();
    }

    /** The first programme by id that the person directs. */
    public UUID programme(SignedIn director) {
        return director.grants().stream()
                .filter(grant -> grant.role() == Role.DIRECTOR)
                .map(SignedIn.Grant::programmeId)
                .sorted()
                .findFirst()
                .orElseThrow(NotFound::new);
    }
}
