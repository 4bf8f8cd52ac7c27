package org.scrubline.platform.jobs;

/** Work that is asked for, by {@link JobQueue}. A room contributes it as a bean. */
public interface QueuedJob {

    /** Lower-case words with hyphens, unlike every other job's. The database keeps it: a new name is a new job. */
    String name();

    /**
     * The work, in the scope of the organisation that asked and outside any transaction. May run twice, when a server
     * was killed in the middle. Whatever it throws is logged, and the job is tried again after 1, 2, 4 … minutes, at
     * most a day, until it succeeds.
     *
     * @param key as it was asked for
     */
    void run(String key);
}
