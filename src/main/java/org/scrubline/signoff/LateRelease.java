package org.scrubline.signoff;

import java.time.Instant;
import java.time.ZoneId;
import java.util.UUID;

/** A director let one sheet be signed that had stayed unsigned too long; name and role are those of that time. */
public record LateRelease(
        UUID id,
        UUID sheetId,
        UUID releasedBy,
        String releasedName,
        String releasedRole,
        String reason,
        Instant releasedAt,
        ZoneId releasedZone) {}
