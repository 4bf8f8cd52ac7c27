package org.scrubline.audit;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Audited;
import org.scrubline.platform.Origin;
import org.scrubline.platform.Origins;
import org.scrubline.platform.RecordSeen;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** Writes entries. */
@Service
class AuditWriter {

    private final AuditStore store;
    private final Origins origins;
    private final Clock clock;

    AuditWriter(AuditStore store, Origins origins, Clock clock) {
        this.store = store;
        this.origins = origins;
        this.clock = clock;
    }

    /** In the transaction of the deed: without one there is nothing the entry could stand or fall with. */
    @Transactional(propagation = Propagation.MANDATORY)
    public void done(Audited event) {
        store.insert(fresh(event), null);
    }

    /** In a short transaction of its own; the same reader and record within one hour of the clock give one entry. */
    @Transactional
    public void seen(RecordSeen event) {
        AuditStore.Fresh fresh = fresh(event);
        store.insert(fresh, fresh.at().truncatedTo(ChronoUnit.HOURS));
    }

    private AuditStore.Fresh fresh(Audited event) {
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        Origin origin = origins.current();
        SignedIn sender = origin.person();
        UUID actor = event.actor() == null && sender != null ? sender.personId() : event.actor();
        return new AuditStore.Fresh(event, actor, roles(event, actor, sender), origin, now);
    }

    /** Roles of the actor in the programme of the record, or all of them where it belongs to none. */
    private static Set<Role> roles(Audited event, @Nullable UUID actor, @Nullable SignedIn sender) {
        if (!event.roles().isEmpty() || sender == null || !sender.personId().equals(actor)) {
            return event.roles();
        }
        UUID programme = event.programme();
        return sender.grants().stream()
                .filter(grant -> programme == null || Objects.equals(grant.programmeId(), programme))
                .map(SignedIn.Grant::role)
                .collect(Collectors.toUnmodifiableSet());
    }
}
