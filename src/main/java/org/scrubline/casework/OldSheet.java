package org.scrubline.casework;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * An open sheet that has not changed for long, or whose scorer was told so.
 *
 * @param reference of its case
 * @param touchedAt last change
 * @param toldAt since when its scorer is told of the removal, or null
 */
record OldSheet(
        UUID id,
        UUID caseId,
        UUID traineeId,
        UUID scorerId,
        String reference,
        Instant openedAt,
        Instant touchedAt,
        @Nullable Instant toldAt) {}
