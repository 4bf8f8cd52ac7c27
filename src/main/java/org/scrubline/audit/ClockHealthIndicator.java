package org.scrubline.audit;

import org.springframework.boot.health.contributor.Health;
import org.springframework.boot.health.contributor.HealthIndicator;
import org.springframework.stereotype.Component;

/** Tells monitoring about a clock that was set back. Never down: what is written keeps its order. */
@Component
class ClockHealthIndicator implements HealthIndicator {

    private final ClockWatch watch;

    ClockHealthIndicator(ClockWatch watch) {
        this.watch = watch;
    }

    @Override
    public Health health() {
        Health.Builder health = Health.up();
        watch.behind()
                .ifPresent(far -> health.withDetail(
                        "warning", "the clock is " + far.toMinutes() + " minutes behind the newest entry"));
        return health.build();
    }
}
