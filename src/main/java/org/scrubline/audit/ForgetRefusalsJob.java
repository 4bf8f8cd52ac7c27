package org.scrubline.audit;

import java.time.LocalTime;
import org.scrubline.platform.RefusedLogins;
import org.scrubline.platform.jobs.JobSchedule;
import org.scrubline.platform.jobs.RecurringJob;
import org.springframework.stereotype.Component;

/** Forgets old refused log-ins every night; they stand outside the organisations. */
@Component
class ForgetRefusalsJob implements RecurringJob {

    private static final LocalTime AT = LocalTime.of(2, 40);

    private final RefusedLogins refusedLogins;

    ForgetRefusalsJob(RefusedLogins refusedLogins) {
        this.refusedLogins = refusedLogins;
    }

    @Override
    public String name() {
        return "old-refused-log-ins";
    }

    @Override
    public JobSchedule schedule() {
        return JobSchedule.daily(AT);
    }

    @Override
    public Reach reach() {
        return Reach.INSTALLATION;
    }

    @Override
    public void run() {
        refusedLogins.forgetOld();
    }
}
