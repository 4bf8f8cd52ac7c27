package org.scrubline.signoff;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Reads signed sheets of the organisation; the newest version of each, oldest case first. */
public interface SignedSheets {

    Optional<SignedSheet> byId(UUID id);

    /** The newest signed version of a sheet. */
    Optional<SignedSheet> ofSheet(UUID sheetId);

    List<SignedSheet> ofTrainee(UUID traineeId);

    List<SignedSheet> ofTrainee(UUID traineeId, String procedureCode);

    List<SignedSheet> ofProgramme(UUID programmeId, String procedureCode);

    /** How many of a programme's sheets speak of a trainee who operated, wholly or in parts. */
    Count count(UUID programmeId, String procedureCode, Instant after);

    /**
     * Sheets counted.
     *
     * @param after those of them signed later than the instant asked about
     */
    record Count(int all, int after) {}
}
