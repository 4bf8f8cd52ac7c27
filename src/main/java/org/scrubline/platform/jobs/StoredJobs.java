package org.scrubline.platform.jobs;

import java.time.Clock;
import java.util.List;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
class StoredJobs implements JobQueue, JobRuns {

    private final JobStore store;
    private final Clock clock;

    StoredJobs(JobStore store, Clock clock) {
        this.store = store;
        this.clock = clock;
    }

    @Override
    @Transactional
    public boolean add(QueuedJob job, String key) {
        return store.queue(job.name(), OwnedKey.here(key).instance(), clock.instant());
    }

    @Override
    @Transactional
    public void addEverywhere(QueuedJob job, String key) {
        store.queueEverywhere(job.name(), key, clock.instant());
    }

    @Override
    @Transactional(readOnly = true)
    public List<JobRun> all() {
        return store.runs();
    }
}
