package org.scrubline.rubric.change;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * From when on a version scores new cases, or a procedure takes none.
 *
 * @param version the version, null for the end of the procedure
 * @param review the agreement it rests on, null for the end of the procedure
 * @param effectiveFrom from when on, not before {@code decidedAt}
 * @param zone the zone whose day it is
 */
public record RubricEffect(
        UUID id,
        String procedure,
        @Nullable UUID version,
        @Nullable UUID review,
        Instant effectiveFrom,
        String zone,
        String reason,
        UUID decidedBy,
        String decidedName,
        Instant decidedAt) {}
