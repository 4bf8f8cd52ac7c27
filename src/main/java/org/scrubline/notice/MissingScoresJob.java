package org.scrubline.notice;

import java.time.Duration;
import org.scrubline.platform.jobs.JobSchedule;
import org.scrubline.platform.jobs.RecurringJob;
import org.springframework.stereotype.Component;

/** Looks for missing scores several times an hour, so that what waits for the end of quiet hours comes soon after it. */
@Component
class MissingScoresJob implements RecurringJob {

    private static final Duration PAUSE = Duration.ofMinutes(15);

    private final MissingScores scores;
    private final Digests digests;

    MissingScoresJob(MissingScores scores, Digests digests) {
        this.scores = scores;
        this.digests = digests;
    }

    @Override
    public String name() {
        return "missing-scores";
    }

    @Override
    public JobSchedule schedule() {
        return JobSchedule.every(PAUSE);
    }

    @Override
    public void run() {
        scores.remind();
        digests.send();
    }
}
