package org.scrubline.progress;

import java.time.LocalTime;
import org.scrubline.people.People;
import org.scrubline.people.Programme;
import org.scrubline.platform.jobs.JobSchedule;
import org.scrubline.platform.jobs.RecurringJob;
import org.scrubline.rubric.Procedures;
import org.springframework.stereotype.Component;

/** Every night: renews the population values of each programme and procedure with a sheet they have not seen. */
@Component
class NightlyRefit implements RecurringJob {

    private static final LocalTime AT = LocalTime.of(2, 10);

    private final People people;
    private final Refits refits;

    NightlyRefit(People people, Refits refits) {
        this.people = people;
        this.refits = refits;
    }

    @Override
    public String name() {
        return "nightly-refit";
    }

    @Override
    public JobSchedule schedule() {
        return JobSchedule.daily(AT);
    }

    @Override
    public void run() {
        for (Programme programme : people.programmes()) {
            for (String procedure : Procedures.ALL) {
                refits.ifUnseen(1, programme.id(), procedure);
            }
        }
    }
}
