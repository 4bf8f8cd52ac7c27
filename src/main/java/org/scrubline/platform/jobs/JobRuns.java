package org.scrubline.platform.jobs;

import java.util.List;

/** How the jobs are doing. */
public interface JobRuns {

    /** Every recurring job, and every queued one that waits or runs; by name. A queued job that is done is gone. */
    List<JobRun> all();
}
