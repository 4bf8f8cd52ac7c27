package org.scrubline.casework;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What a trainee enters to log a case.
 *
 * @param traineeId whose case it is; the person logging, or another trainee on the same case
 * @param reference pseudonymous reference
 * @param endedAt end of the case, not later than ten minutes from now
 * @param secondEyeOf case of the other eye on the same day; null when there is none
 */
public record CaseEntry(
        UUID programmeId,
        UUID traineeId,
        UUID supervisorId,
        UUID siteId,
        String reference,
        String procedureCode,
        Eye eye,
        Part claimedPart,
        Supervision plannedSupervision,
        List<String> factors,
        Instant endedAt,
        ZoneId endedZone,
        @Nullable UUID secondEyeOf) {

    public CaseEntry {
        factors = List.copyOf(factors);
    }
}
