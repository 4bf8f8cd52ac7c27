package org.scrubline.platform.jobs;

import java.util.List;
import java.util.UUID;
import java.util.function.BooleanSupplier;
import org.scrubline.platform.TenantScope;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;

/** Runs a job where it belongs: in each organisation, in one, or in none. */
@Component
class JobRunner {

    private static final Logger log = LoggerFactory.getLogger(JobRunner.class);

    private final JobStore store;

    JobRunner(JobStore store) {
        this.store = store;
    }

    /**
     * One run of a recurring job.
     *
     * @param stopping whether the server is about to stop; asked between organisations
     * @throws JobUnfinished when an organisation's part failed or was left out
     */
    void run(RecurringJob job, BooleanSupplier stopping) {
        if (job.reach() == RecurringJob.Reach.INSTALLATION) {
            job.run();
            return;
        }
        List<UUID> organisations = store.organisations();
        int done = 0;
        for (UUID organisation : organisations) {
            if (!stopping.getAsBoolean() && ran(job, organisation)) {
                done++;
            }
        }
        if (done < organisations.size()) {
            throw new JobUnfinished(done, organisations.size());
        }
    }

    private static boolean ran(RecurringJob job, UUID organisation) {
        try {
            TenantScope.run(organisation, job::run);
            return true;
        } catch (RuntimeException failure) {
            log.warn("Job {} failed for organisation {}: {}", job.name(), organisation, failure.toString());
            log.debug("The failure of job {}", job.name(), failure);
            return false;
        }
    }

    /** One run of a queued job, in the organisation that asked. */
    void run(QueuedJob job, String instance) {
        OwnedKey owned = OwnedKey.parse(instance);
        TenantScope.run(owned.organisation(), () -> job.run(owned.key()));
    }
}
