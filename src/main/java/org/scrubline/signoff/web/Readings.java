package org.scrubline.signoff.web;

import org.scrubline.people.VisitorAccess;
import org.scrubline.people.Visitors;
import org.scrubline.platform.Audited;
import org.scrubline.platform.RecordSeen;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.SignedContent;
import org.scrubline.signoff.SignedSheet;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Component;

/** Tells that somebody else than the trainee opened a signed record. */
@Component
class Readings {

    private final Visitors visitors;
    private final ApplicationEventPublisher events;

    Readings(Visitors visitors, ApplicationEventPublisher events) {
        this.visitors = visitors;
        this.events = events;
    }

    void seen(SignedIn reader, SignedSheet signed) {
        if (reader.personId().equals(signed.traineeId())) {
            return;
        }
        String reference =
                SignedContent.read(signed.content()).reviewed().operation().reference();
        events.publishEvent(new RecordSeen(
                reader,
                signed.traineeId(),
                signed.programmeId(),
                new Audited.Item("signed-sheet", signed.id(), signed.versionNo(), reference),
                visitors.toRecord(reader, signed.id(), signed.traineeId(), signed.programmeId())
                        .map(VisitorAccess::purpose)
                        .orElse(null)));
    }
}
