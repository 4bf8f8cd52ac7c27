package org.scrubline.platform.security;

import java.time.Clock;
import java.util.UUID;
import org.scrubline.platform.RepeatedWrongPassword;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** Security events, each in a transaction of its own: they stay whatever becomes of the request. */
@Service
class SecurityNotes {

    private static final Logger log = LoggerFactory.getLogger(SecurityNotes.class);

    private final ApplicationEventPublisher events;
    private final Clock clock;

    SecurityNotes(ApplicationEventPublisher events, Clock clock) {
        this.events = events;
        this.clock = clock;
    }

    /** In the log for whoever runs the server, in the audit trail for the programme. */
    @Transactional(propagation = Propagation.REQUIRES_NEW)
    public void wrongPasswords(UUID accountId) {
        log.warn("Security note: repeated wrong passwords at signing, account {}", accountId);
        events.publishEvent(new RepeatedWrongPassword(accountId, clock.instant()));
    }
}
