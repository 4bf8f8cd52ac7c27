package org.scrubline.progress.web;

import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.scrubline.people.People;
import org.scrubline.people.VisitorAccess;
import org.scrubline.people.Visitors;
import org.scrubline.platform.Audited;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.RecordSeen;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.progress.TraineeProgress;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Component;

/** Tells that somebody else opened a trainee's numbers. */
@Component
class ProgressSeen {

    private static final Set<Role> READERS = Set.of(Role.DIRECTOR, Role.COMMITTEE_MEMBER, Role.VISITOR);

    private final People people;
    private final Visitors visitors;
    private final ApplicationEventPublisher events;

    ProgressSeen(People people, Visitors visitors, ApplicationEventPublisher events) {
        this.people = people;
        this.visitors = visitors;
        this.events = events;
    }

    void by(SignedIn reader, TraineeProgress read) {
        UUID trainee = read.trainee().id();
        if (reader.personId().equals(trainee)) {
            return;
        }
        events.publishEvent(new RecordSeen(
                reader,
                trainee,
                programme(reader, trainee),
                new Audited.Item("progress", trainee, null, ""),
                visitors.toTrainee(reader, trainee).stream()
                        .map(VisitorAccess::purpose)
                        .findFirst()
                        .orElse(null)));
    }

    /** The programmes whose decisions about a trainee this reader may see beside the numbers. */
    Set<UUID> programmes(SignedIn reader, UUID trainee) {
        boolean own = reader.personId().equals(trainee);
        return reader.grants().stream()
                .filter(grant -> own || READERS.contains(grant.role()))
                .map(SignedIn.Grant::programmeId)
                .collect(Collectors.toSet());
    }

    /** The programme through which the reader came: one the trainee is in now, else any the reader may read in. */
    private UUID programme(SignedIn reader, UUID trainee) {
        List<UUID> open = reader.grants().stream()
                .filter(grant -> READERS.contains(grant.role()))
                .map(SignedIn.Grant::programmeId)
                .distinct()
                .sorted()
                .toList();
        return open.stream()
                .filter(programme -> people.holding(programme, Role.TRAINEE).stream()
                        .anyMatch(person -> person.id().equals(trainee)))
                .findFirst()
                .or(() -> open.stream().findFirst())
                .orElseThrow(NotFound::new);
    }
}
