package org.scrubline.casework;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * The answers of a {@link CaseEntry} that can be wrong, as far as they were given; null for one that is missing. Lets
 * every reason be said at once while others are still to come.
 */
public record CaseAnswers(
        UUID programmeId,
        @Nullable UUID traineeId,
        @Nullable UUID supervisorId,
        @Nullable UUID siteId,
        String reference,
        @Nullable String procedureCode,
        @Nullable Eye eye,
        List<String> factors,
        @Nullable Instant endedAt,
        @Nullable ZoneId endedZone,
        @Nullable UUID secondEyeOf,
        @Nullable LocalDate plannedOn) {

    public CaseAnswers {
        factors = List.copyOf(factors);
    }

    /** Of an entry that is complete. */
    static CaseAnswers of(CaseEntry entry) {
        return new CaseAnswers(
                entry.programmeId(),
                entry.traineeId(),
                entry.supervisorId(),
                entry.siteId(),
                entry.reference(),
                entry.procedureCode(),
                entry.eye(),
                entry.factors(),
                entry.endedAt(),
                entry.endedZone(),
                entry.secondEyeOf(),
                entry.plannedOn());
    }
}
