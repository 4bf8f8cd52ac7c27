package org.scrubline.casework;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What is entered to log or to plan a case.
 *
 * @param traineeId whose case it is: the trainee who logs it, or the trainee of the supervisor who logs it
 * @param supervisorId who is asked to score; the person logging, when that is a supervisor
 * @param reference pseudonymous reference: letter, digit, hyphen, three digits
 * @param endedAt end of the case, not later than ten minutes from now; null for a case that is only planned
 * @param endedZone zone of the site's clock
 * @param secondEyeOf case of the other eye on the same day; null when there is none
 * @param plannedOn day at the site a planned case is meant for; null when nobody said, or when it has ended
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
        @Nullable Instant endedAt,
        ZoneId endedZone,
        @Nullable UUID secondEyeOf,
        @Nullable LocalDate plannedOn) {

    public CaseEntry {
        factors = List.copyOf(factors);
    }
}
