package org.scrubline.signoff;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.people.Introductions;
import org.scrubline.people.People;
import org.scrubline.people.Settings;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.springframework.stereotype.Component;

/** Who may sign at all, read from the database in the signing transaction, never from the page or the session. */
@Component
class SigningAuthority {

    private final People people;
    private final Settings settings;
    private final Introductions introductions;

    SigningAuthority(People people, Settings settings, Introductions introductions) {
        this.people = people;
        this.settings = settings;
        this.introductions = introductions;
    }

    /** What keeps this person from signing anything. */
    Optional<Refusal> standing(UUID person) {
        return people.signatory(person)
                .filter(People.Signatory::open)
                .map(signatory -> signatory.shared() ? Optional.of(refusal("shared")) : Optional.<Refusal>empty())
                .orElseGet(() -> Optional.of(refusal("closed-account")));
    }

    /** What keeps this person from signing as a supervisor of the programme about this trainee. */
    List<Refusal> supervisor(UUID programme, UUID person, UUID trainee) {
        List<Refusal> reasons = new ArrayList<>();
        standing(person).ifPresent(reasons::add);
        if (!holds(programme, person, Role.SUPERVISOR)) {
            reasons.add(refusal("no-supervisor"));
        }
        if (trainee.equals(person)) {
            reasons.add(refusal("own-training"));
        } else if (people.inConflict(person, trainee)) {
            reasons.add(refusal("conflict"));
        }
        if (settings.of(programme).introductionFirst()
                && !introductions.of(programme).containsKey(person)) {
            reasons.add(refusal("introduction"));
        }
        return reasons;
    }

    /** The same, for a second signature beside the scorer's. */
    List<Refusal> countersigner(SignedSheet version, UUID person) {
        List<Refusal> reasons = new ArrayList<>(supervisor(version.programmeId(), person, version.traineeId()));
        if (version.signerId().equals(person)) {
            reasons.add(refusal("own-signature"));
        } else if (people.inConflict(person, version.signerId())) {
            reasons.add(refusal("conflict-scorer"));
        }
        return reasons;
    }

    boolean holds(UUID programme, UUID person, Role role) {
        return people.holding(programme, role).stream()
                .anyMatch(holder -> holder.id().equals(person));
    }

    private static Refusal refusal(String key) {
        return Refusal.at(Signing.AUTHORITY, "signoff.refusal." + key);
    }
}
