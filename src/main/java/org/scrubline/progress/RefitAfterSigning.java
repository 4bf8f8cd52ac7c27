package org.scrubline.progress;

import java.util.UUID;
import org.scrubline.platform.jobs.JobQueue;
import org.scrubline.platform.jobs.QueuedJob;
import org.scrubline.signoff.EvidenceAdded;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/** By day: renews the population values of a programme and procedure once they have not seen twenty signed sheets. */
@Component
class RefitAfterSigning implements QueuedJob {

    /** Unseen sheets at which the values are renewed. */
    static final int ENOUGH = 20;

    private static final String BETWEEN = "/";

    private final Refits refits;
    private final JobQueue queue;

    RefitAfterSigning(Refits refits, JobQueue queue) {
        this.refits = refits;
        this.queue = queue;
    }

    /** Whether there are enough is counted by the job: nobody who signs waits for it. */
    @EventListener
    void signed(EvidenceAdded added) {
        queue.add(this, added.programmeId() + BETWEEN + added.procedureCode());
    }

    @Override
    public String name() {
        return "refit-after-signing";
    }

    @Override
    public void run(String key) {
        int between = key.indexOf(BETWEEN);
        refits.ifUnseen(ENOUGH, UUID.fromString(key.substring(0, between)), key.substring(between + 1));
    }
}
