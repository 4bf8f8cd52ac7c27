package org.scrubline.casework;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Reads what is planned, by day; cases without a day come last. */
public interface PlannedCases {

    /** Planned cases this supervisor will be asked to score. */
    List<PlannedCase> ofScorer(UUID scorerId);

    /** A trainee's own planned cases. */
    List<PlannedCase> ofTrainee(UUID traineeId);

    /** End of the trainee's last case of the procedure that counts as {@linkplain Cases#operated operated}. */
    Optional<Instant> lastOperated(UUID traineeId, String procedureCode);
}
