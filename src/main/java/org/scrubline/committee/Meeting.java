package org.scrubline.committee;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.people.Person;

/**
 * A meeting of a programme's committee.
 *
 * @param members everyone invited, by name, the chair among them
 * @param trainees whom it speaks about, by name
 * @param conflicts declared for this meeting
 */
public record Meeting(
        UUID id,
        UUID programmeId,
        Instant plannedAt,
        UUID chairId,
        MeetingState state,
        List<Member> members,
        List<Person> trainees,
        List<Conflict> conflicts) {

    /** Somebody invited. */
    public record Member(Person person, boolean present) {}

    /** A member who is not free about a trainee, and why. */
    public record Conflict(UUID memberId, UUID traineeId, String reason, Instant declaredAt) {}

    public Meeting {
        members = List.copyOf(members);
        trainees = List.copyOf(trainees);
        conflicts = List.copyOf(conflicts);
    }

    public Optional<Member> member(UUID person) {
        return members.stream()
                .filter(member -> member.person().id().equals(person))
                .findFirst();
    }

    public Optional<Person> trainee(UUID person) {
        return trainees.stream().filter(trainee -> trainee.id().equals(person)).findFirst();
    }

    public Optional<Conflict> conflict(UUID member, UUID trainee) {
        return conflicts.stream()
                .filter(one -> one.memberId().equals(member) && one.traineeId().equals(trainee))
                .findFirst();
    }
}
