package org.scrubline.ledger;

import java.time.LocalTime;
import org.scrubline.platform.jobs.JobSchedule;
import org.scrubline.platform.jobs.RecurringJob;
import org.springframework.stereotype.Component;

/** A checkpoint a night for each organisation whose ledger grew. */
@Component
class NightlyCheckpoint implements RecurringJob {

    private static final LocalTime AT = LocalTime.of(1, 30);

    private final Checkpoints checkpoints;

    NightlyCheckpoint(Checkpoints checkpoints) {
        this.checkpoints = checkpoints;
    }

    @Override
    public String name() {
        return "ledger-checkpoint";
    }

    @Override
    public JobSchedule schedule() {
        return JobSchedule.daily(AT);
    }

    @Override
    public void run() {
        checkpoints.publish();
    }
}
