package org.scrubline.platform.jobs;

/** Asks for work to be done soon, by whichever server looks first. */
public interface JobQueue {

    /**
     * Queues a job in the organisation of this thread, together with the caller's transaction if there is one. A key
     * that waits or runs already is not queued again, so the work must read what to do from the data when it runs, and
     * the caller must ask again when the need outlives a run.
     *
     * @param key what the work is about, in words the job understands
     * @return whether it was queued now
     */
    boolean add(QueuedJob job, String key);

    /**
     * Queues a job in every organisation, when it is not known whose work it is. One statement, whatever comes of it.
     *
     * @param key as for {@link #add}
     */
    void addEverywhere(QueuedJob job, String key);
}
