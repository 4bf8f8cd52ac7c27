package org.scrubline.removal;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A request to remove the records of a trainee, and what came of it.
 *
 * @param removed null while nobody confirmed it
 */
public record RemovalFile(
        UUID request,
        UUID programme,
        UUID trainee,
        String traineeName,
        String reason,
        UUID askedBy,
        String askedName,
        Instant askedAt,
        @Nullable Removed removed) {

    /** Who confirmed it, and how many signed versions went. */
    public record Removed(UUID id, UUID by, String name, Instant at, int records) {}
}
