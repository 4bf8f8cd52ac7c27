package org.scrubline.signoff;

import java.time.Instant;
import java.time.ZoneId;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * An unsigned sheet that its scorer can no longer sign alone.
 *
 * @param procedure title of the rubric
 * @param released null while no director has released it
 */
public record ClosedSheet(
        UUID sheetId,
        UUID programmeId,
        String procedure,
        String reference,
        String traineeName,
        String scorerName,
        Instant caseEndedAt,
        ZoneId zone,
        @Nullable LateRelease released) {}
