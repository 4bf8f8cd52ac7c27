package org.scrubline.audit;

import java.time.Duration;
import java.util.OptionalLong;
import java.util.concurrent.locks.LockSupport;
import org.scrubline.ledger.BeforeCheckpoint;
import org.scrubline.platform.jobs.JobSchedule;
import org.scrubline.platform.jobs.RecurringJob;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.stereotype.Component;

/** Seals the audit trail every hour and before each checkpoint. */
@Component
class SealAuditJob implements RecurringJob, BeforeCheckpoint {

    private static final Duration PAUSE = Duration.ofHours(1);

    /** Writers hold on for milliseconds; whoever is met a hundred times at work is met at the next hour. */
    private static final int LOOKS = 100;

    private static final Duration BETWEEN_LOOKS = Duration.ofMillis(20);

    private final AuditSealer sealer;

    SealAuditJob(AuditSealer sealer) {
        this.sealer = sealer;
    }

    @Override
    public String name() {
        return "audit-seal";
    }

    @Override
    public JobSchedule schedule() {
        return JobSchedule.every(PAUSE);
    }

    @Override
    public void run() {
        prepare();
    }

    @Override
    public void prepare() {
        OptionalLong settled = sealer.settled();
        for (int look = 1; settled.isEmpty() && look < LOOKS; look++) {
            LockSupport.parkNanos(BETWEEN_LOOKS.toNanos());
            settled = sealer.settled();
        }
        settled.ifPresent(this::seal);
    }

    private void seal(long last) {
        try {
            sealer.seal(last);
        } catch (DuplicateKeyException sealedMeanwhile) {
            // Another run sealed the same entries, which is what was wanted.
        }
    }
}
