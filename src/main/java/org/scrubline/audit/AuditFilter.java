package org.scrubline.audit;

import java.time.Instant;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Which entries; null leaves a condition out.
 *
 * @param person who did it or whom it is about
 * @param actions any of these was done; empty leaves the condition out
 * @param from first instant
 * @param until first instant after
 */
public record AuditFilter(
        @Nullable UUID person,
        Set<String> actions,
        @Nullable Instant from,
        @Nullable Instant until) {

    public AuditFilter {
        actions = Set.copyOf(actions);
    }

    /** Everything. */
    public static final AuditFilter ALL = new AuditFilter(null, Set.of(), null, null);
}
