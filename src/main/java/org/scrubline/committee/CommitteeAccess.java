package org.scrubline.committee;

import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.scrubline.people.VisitorAccess;
import org.scrubline.people.Visitors;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

/** Who sees what of the committee's work. Administrators see that something is there and when, not what it says. */
@Component
class CommitteeAccess {

    private static final Set<Role> SEEING = Set.of(Role.DIRECTOR, Role.COMMITTEE_MEMBER, Role.ADMINISTRATOR);

    private final Visitors visitors;

    CommitteeAccess(Visitors visitors) {
        this.visitors = visitors;
    }

    /** Programmes whose meetings this person sees. */
    Set<UUID> seeing(SignedIn who) {
        return who.grants().stream()
                .filter(grant -> SEEING.contains(grant.role()))
                .map(SignedIn.Grant::programmeId)
                .collect(Collectors.toSet());
    }

    /** Whether this person reads what is said about the programme's trainees; nobody in that way about themselves. */
    boolean reads(SignedIn who, UUID programme, UUID trainee) {
        boolean member = who.has(Role.DIRECTOR, programme) || who.has(Role.COMMITTEE_MEMBER, programme);
        return member && !who.personId().equals(trainee);
    }

    /** Whether a director opened this trainee's numbers in the programme to this visitor for today. */
    boolean visits(SignedIn who, UUID programme, UUID trainee) {
        return visitors.toTrainee(who, trainee).stream()
                .map(VisitorAccess::programmeId)
                .anyMatch(programme::equals);
    }

    boolean directs(SignedIn who, UUID programme) {
        return who.has(Role.DIRECTOR, programme);
    }

    boolean directsOrAdministers(SignedIn who, UUID programme) {
        return directs(who, programme) || who.has(Role.ADMINISTRATOR, programme);
    }

    static void require(boolean allowed) {
        if (!allowed) {
            throw new NotFound();
        }
    }
}
