package org.scrubline.platform.jobs;

/** Work that comes back by itself. A room contributes it as a bean; it starts and stops with the server. */
public interface RecurringJob {

    /** Whom one run is for. */
    enum Reach {
        /** Once in the scope of each organisation, one after the other. */
        EACH_ORGANISATION,
        /** Once, outside every scope. */
        INSTALLATION
    }

    /** Lower-case words with hyphens, unlike every other job's. The database keeps it: a new name is a new job. */
    String name();

    JobSchedule schedule();

    default Reach reach() {
        return Reach.EACH_ORGANISATION;
    }

    /**
     * The work, outside any transaction. Whatever it throws is logged, does not keep the other organisations from their
     * run, and counts the whole run as failed; the job runs again at its next time.
     */
    void run();
}
