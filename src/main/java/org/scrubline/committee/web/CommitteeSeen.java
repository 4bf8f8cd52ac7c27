package org.scrubline.committee.web;

import java.util.UUID;
import org.scrubline.committee.Decision;
import org.scrubline.committee.Pack;
import org.scrubline.people.VisitorAccess;
import org.scrubline.people.Visitors;
import org.scrubline.platform.Audited;
import org.scrubline.platform.RecordSeen;
import org.scrubline.platform.SignedIn;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Component;

/** Tells that somebody else opened what a committee keeps about a trainee. */
@Component
class CommitteeSeen {

    private final Visitors visitors;
    private final ApplicationEventPublisher events;

    CommitteeSeen(Visitors visitors, ApplicationEventPublisher events) {
        this.visitors = visitors;
        this.events = events;
    }

    void pack(SignedIn reader, Pack pack) {
        UUID programme = pack.content().programme().id();
        seen(reader, pack.traineeId(), programme, new Audited.Item("evidence-pack", pack.id(), null, ""));
    }

    void decision(SignedIn reader, Decision decision) {
        seen(
                reader,
                decision.traineeId(),
                decision.programmeId(),
                new Audited.Item("committee-decision", decision.id(), null, ""));
    }

    private void seen(SignedIn reader, UUID trainee, UUID programme, Audited.Item item) {
        if (!reader.personId().equals(trainee)) {
            String purpose = visitors.toTrainee(reader, trainee).stream()
                    .map(VisitorAccess::purpose)
                    .findFirst()
                    .orElse(null);
            events.publishEvent(new RecordSeen(reader, trainee, programme, item, purpose));
        }
    }
}
