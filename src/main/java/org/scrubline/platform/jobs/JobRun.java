package org.scrubline.platform.jobs;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * Where one job stands.
 *
 * @param key organisation and key of a queued job; null for a recurring one
 * @param next when it is due; in the past while it runs or waits for a free server
 * @param running whether a server is at it
 * @param lastSuccess end of the newest run that succeeded; null before the first
 * @param lastFailure end of the newest run that failed; null before the first
 * @param failuresInARow runs failed since the last success
 */
public record JobRun(
        String job,
        @Nullable String key,
        Instant next,
        boolean running,
        @Nullable Instant lastSuccess,
        @Nullable Instant lastFailure,
        int failuresInARow) {

    /** How the newest run ended. */
    public enum Outcome {
        NONE_YET,
        SUCCESS,
        FAILURE
    }

    public Outcome outcome() {
        if (failuresInARow > 0) {
            return Outcome.FAILURE;
        }
        return lastSuccess == null ? Outcome.NONE_YET : Outcome.SUCCESS;
    }
}
