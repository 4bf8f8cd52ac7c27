package org.scrubline.audit;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import org.scrubline.platform.TenantScope;
import org.scrubline.platform.jobs.JobSchedule;
import org.scrubline.platform.jobs.RecurringJob;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;

/**
 * Sees when the clock of the server was set back: the newest instant of the database then lies in the future. The order of
 * the ledger does not depend on the clock, but every printed time does.
 */
@Component
class ClockWatch implements RecurringJob {

    /** What a clock that is kept right may differ after a restart elsewhere. Common practice, no source. */
    static final Duration TOLERATED = Duration.ofMinutes(10);

    private static final Logger log = LoggerFactory.getLogger(ClockWatch.class);

    private final ClockNotes notes;
    private final Clock clock;
    private final Map<UUID, Duration> behind = new ConcurrentHashMap<>();

    ClockWatch(ClockNotes notes, Clock clock) {
        this.notes = notes;
        this.clock = clock;
    }

    @Override
    public String name() {
        return "clock-watch";
    }

    @Override
    public JobSchedule schedule() {
        return JobSchedule.every(TOLERATED);
    }

    /** One entry when it begins, not one a look. */
    @Override
    public void run() {
        UUID tenant = TenantScope.require();
        Duration far = notes.newest()
                .map(newest -> Duration.between(clock.instant(), newest))
                .filter(ahead -> ahead.compareTo(TOLERATED) > 0)
                .orElse(Duration.ZERO);
        if (far.isZero()) {
            behind.remove(tenant);
        } else if (behind.put(tenant, far) == null) {
            Instant now = clock.instant();
            log.warn("Security note: the clock is {} min behind the newest entry of {}", far.toMinutes(), tenant);
            notes.behind(now, now.plus(far));
        }
    }

    /** How far the clock is behind, the worst of all organisations; empty when it is not. */
    Optional<Duration> behind() {
        return behind.values().stream().max(Duration::compareTo);
    }
}
