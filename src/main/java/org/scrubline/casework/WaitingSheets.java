package org.scrubline.casework;

import java.time.Instant;
import java.util.List;
import java.util.UUID;

/** Scores that were asked for and have not come: open sheets, neither signed nor void nor written anew. */
public interface WaitingSheets {

    /** Those of cases that ended at or before an instant, oldest case first. */
    List<WaitingSheet> endedBefore(Instant at);

    /** Those one supervisor is asked for, oldest case first. */
    List<WaitingSheet> ofScorer(UUID scorerId);
}
