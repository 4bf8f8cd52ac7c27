package org.scrubline.audit;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Which entries; null leaves a condition out.
 *
 * @param person who did it or whom it is about
 * @param from first instant
 * @param until first instant after
 */
public record AuditFilter(
        @Nullable UUID person,
        @Nullable String action,
        @Nullable Instant from,
        @Nullable Instant until) {

    /** Everything. */
    public static final AuditFilter ALL = new AuditFilter(null, null, null, null);
}
