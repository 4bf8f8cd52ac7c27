package org.scrubline.casework;

import java.time.LocalTime;
import org.scrubline.platform.jobs.JobSchedule;
import org.scrubline.platform.jobs.RecurringJob;
import org.springframework.stereotype.Component;

/** Looks at old open sheets every night. */
@Component
class OldSheetsJob implements RecurringJob {

    private static final LocalTime AT = LocalTime.of(2, 30);

    private final OldSheets sheets;

    OldSheetsJob(OldSheets sheets) {
        this.sheets = sheets;
    }

    @Override
    public String name() {
        return "old-open-sheets";
    }

    @Override
    public JobSchedule schedule() {
        return JobSchedule.daily(AT);
    }

    @Override
    public void run() {
        sheets.review();
    }
}
