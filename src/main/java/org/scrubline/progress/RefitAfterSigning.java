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

    /** Unseen sheets at which a renewal is queued. */
    static final int ENOUGH = 20;

    private static final String BETWEEN = "/";

    private final PopulationFits fits;
    private final Refits refits;
    private final JobQueue queue;

    RefitAfterSigning(PopulationFits fits, Refits refits, JobQueue queue) {
        this.fits = fits;
        this.refits = refits;
        this.queue = queue;
    }

    /** Counts inside the signing transaction, so the queue never holds what was not signed. */
    @EventListener
    void signed(EvidenceAdded added) {
        if (fits.unseen(added.programmeId(), added.procedureCode()) >= ENOUGH) {
            queue.add(this, added.programmeId() + BETWEEN + added.procedureCode());
        }
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
