package org.scrubline.progress;

import java.time.Instant;
import java.util.UUID;
import org.scrubline.scoring.curve.PopulationFit;

/**
 * What the model estimated from a programme, as stored.
 *
 * @param dataUntil the newest signature among the sheets it saw
 * @param sheets how many sheets it saw
 */
record StoredFit(PopulationFit fit, Instant dataUntil, int sheets, Instant fittedAt) {

    /** A fit with the id of its row. */
    record Known(UUID id, StoredFit fit) {}

    /** Which sheets a fit saw, without the fit itself. */
    record Seen(Instant dataUntil, int sheets) {}
}
