package org.scrubline.platform;

import java.time.Duration;
import java.util.Optional;

/** Slows the guessing of secrets: after a few failures in a row each further one blocks for longer, never for good. */
public interface Guesses {

    /**
     * How long the subject still has to wait, if at all.
     *
     * @param subject who guesses what, such as {@code hand-off:} and a person's id
     */
    Optional<Duration> blockedFor(String subject);

    /** Counts a failure, even if the caller's work is rolled back. */
    void failed(String subject);

    void succeeded(String subject);
}
