package org.scrubline.training;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.people.Programme;
import org.scrubline.people.Roles;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

/**
 * Who reads and writes what in training records: trainees their own; directors and committee members all of it;
 * administrators that goals and baseline are there, not what they say; supervisors the induction and practice.
 */
@Component
class TrainingAccess {

    private static final List<Role> READERS =
            List.of(Role.DIRECTOR, Role.COMMITTEE_MEMBER, Role.ADMINISTRATOR, Role.SUPERVISOR);

    private final People people;
    private final Roles roles;

    TrainingAccess(People people, Roles roles) {
        this.people = people;
        this.roles = roles;
    }

    /** A trainee and the programme the reader may read about. */
    record Found(Programme programme, Person trainee) {}

    /** The programmes whose trainees this person may read about, by name. */
    List<Programme> programmes(SignedIn who) {
        return people.programmes().stream()
                .filter(one -> READERS.stream().anyMatch(role -> who.has(role, one.id())))
                .toList();
    }

    /** Everyone who trains or trained in the programme. */
    List<Person> trainees(UUID programme) {
        return roles.everHeld(programme, Role.TRAINEE);
    }

    /** {@code NotFound} for whom the record is none of their business. */
    Found find(SignedIn who, UUID trainee) {
        List<Programme> candidates = trainee.equals(who.personId()) ? people.programmes() : programmes(who);
        return candidates.stream()
                .flatMap(programme -> trainees(programme.id()).stream()
                        .filter(one -> one.id().equals(trainee))
                        .map(one -> new Found(programme, one)))
                .findFirst()
                .orElseThrow(NotFound::new);
    }

    /** What of the entries this person may see. */
    List<TrainingEntry> visible(SignedIn who, UUID programme, List<TrainingEntry> entries) {
        return entries.stream()
                .filter(entry ->
                        !entry.kind().personal() || guides(who, entry) || who.has(Role.ADMINISTRATOR, programme))
                .map(entry -> entry.kind().personal() && !guides(who, entry) ? entry.withoutText() : entry)
                .toList();
    }

    private static boolean guides(SignedIn who, TrainingEntry entry) {
        return who.personId().equals(entry.traineeId())
                || who.has(Role.DIRECTOR, entry.programmeId())
                || who.has(Role.COMMITTEE_MEMBER, entry.programmeId());
    }

    Set<TrainingKind> writes(SignedIn who, UUID programme, UUID trainee) {
        Set<TrainingKind> kinds = EnumSet.noneOf(TrainingKind.class);
        for (TrainingKind kind : TrainingKind.values()) {
            if (writer(who, programme, trainee, kind).isPresent()) {
                kinds.add(kind);
            }
        }
        return kinds;
    }

    /** The role in which this person may write an entry of a kind. Nobody guides their own training. */
    Optional<Role> writer(SignedIn who, UUID programme, UUID trainee, TrainingKind kind) {
        List<Role> fitting = trainee.equals(who.personId()) ? own(kind) : others(kind);
        return fitting.stream().filter(role -> who.has(role, programme)).findFirst();
    }

    private static List<Role> own(TrainingKind kind) {
        return kind == TrainingKind.GOAL || kind == TrainingKind.WET_LAB ? List.of(Role.TRAINEE) : List.of();
    }

    private static List<Role> others(TrainingKind kind) {
        return switch (kind) {
            case INDUCTION -> List.of(Role.DIRECTOR, Role.ADMINISTRATOR);
            case BASELINE, GOAL -> List.of(Role.DIRECTOR);
            case WET_LAB -> List.of(Role.SUPERVISOR);
        };
    }

    boolean answers(SignedIn who, UUID programme, UUID trainee) {
        return who.has(Role.SUPERVISOR, programme) && !trainee.equals(who.personId());
    }

    /** Declared cases feed the numbers, so the trainee does not declare them alone. */
    boolean declares(SignedIn who, UUID programme, UUID trainee) {
        return who.has(Role.DIRECTOR, programme) && !trainee.equals(who.personId());
    }
}
