package org.scrubline.casework;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.rubric.Band;

/**
 * A case as logged. Carries nothing of the patient but a reference that means something in the hospital alone.
 *
 * @param reference pseudonymous reference, unique in the programme
 * @param procedureCode code of the procedure planned
 * @param factors codes of the complexity factors present
 * @param complexitySetLate the factors were entered after the case had started
 * @param endedAt end of the case; null until it ended
 * @param endedZone zone of the site's clock at the end
 * @param convertedTo code of the procedure it became, if it was converted
 * @param secondEyeOf the case of the other eye on the same day, if any
 * @param plannedOn day at the site it was planned for; null when nobody said
 * @param lockVersion grows with each change
 */
public record SurgicalCase(
        UUID id,
        UUID programmeId,
        UUID siteId,
        String reference,
        String procedureCode,
        Eye eye,
        CaseState state,
        Supervision plannedSupervision,
        Band band,
        List<String> factors,
        boolean complexitySetLate,
        @Nullable Instant endedAt,
        @Nullable ZoneId endedZone,
        @Nullable String convertedTo,
        @Nullable String abandonedReason,
        @Nullable UUID secondEyeOf,
        UUID loggedBy,
        Instant loggedAt,
        @Nullable LocalDate plannedOn,
        int lockVersion) {

    public SurgicalCase {
        factors = List.copyOf(factors);
    }
}
