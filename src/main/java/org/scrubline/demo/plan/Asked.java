package org.scrubline.demo.plan;

import java.time.Duration;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * An operation with the supervisor asked to score it.
 *
 * @param delay from the end of the case to the signature
 * @param second a second scorer; null in most cases
 */
record Asked(
        Operation operation,
        String scorer,
        Duration delay,
        CaseStatus status,
        @Nullable String second) {

    Instant signedAt() {
        return operation.slot().endedAt().plus(delay);
    }

    Asked as(CaseStatus other) {
        return new Asked(operation, scorer, delay, other, second);
    }

    Asked with(String secondScorer) {
        return new Asked(operation, scorer, delay, status, secondScorer);
    }

    /** Signed within this time after all. */
    Asked within(Duration most) {
        return delay.compareTo(most) <= 0 ? this : new Asked(operation, scorer, most, status, second);
    }
}
