package org.scrubline.audit;

import java.time.Instant;
import java.util.Optional;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The newest instant of the organisation in scope, and the entry that the clock is behind it. */
@Service
class ClockNotes {

    private final AuditQueries queries;
    private final ApplicationEventPublisher events;

    ClockNotes(AuditQueries queries, ApplicationEventPublisher events) {
        this.queries = queries;
        this.events = events;
    }

    @Transactional(readOnly = true)
    public Optional<Instant> newest() {
        return queries.newest();
    }

    @Transactional
    public void behind(Instant clock, Instant newest) {
        events.publishEvent(new ClockBehind(clock, newest));
    }
}
