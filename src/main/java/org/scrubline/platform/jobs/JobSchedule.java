package org.scrubline.platform.jobs;

import com.github.kagkarlsson.scheduler.task.schedule.Schedule;
import com.github.kagkarlsson.scheduler.task.schedule.Schedules;
import java.time.Duration;
import java.time.LocalTime;
import java.time.ZoneOffset;

/** When a recurring job runs. */
public final class JobSchedule {

    private final Schedule schedule;

    private JobSchedule(Schedule schedule) {
        this.schedule = schedule;
    }

    /** Once a day. */
    public static JobSchedule daily(LocalTime utc) {
        return new JobSchedule(Schedules.daily(ZoneOffset.UTC, utc));
    }

    /**
     * Again and again, the first time at the first start.
     *
     * @param pause from the end of a run to the start of the next, more than 0
     */
    public static JobSchedule every(Duration pause) {
        if (pause.isNegative() || pause.isZero()) {
            throw new IllegalArgumentException("a job without a pause would never rest");
        }
        return new JobSchedule(Schedules.fixedDelay(pause));
    }

    Schedule schedule() {
        return schedule;
    }
}
