package org.scrubline.platform.jobs;

/** Not every organisation had its run; what kept each of them is in the log. */
class JobUnfinished extends RuntimeException {

    JobUnfinished(int done, int of) {
        super("done for " + done + " of " + of + " organisations");
    }
}
