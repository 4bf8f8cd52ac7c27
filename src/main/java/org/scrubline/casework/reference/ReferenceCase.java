package org.scrubline.casework.reference;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.rubric.Band;

/**
 * A recorded operation to be scored by all supervisors of a programme.
 *
 * @param reference what people call it; once in a programme
 * @param rubricId the published version it is scored with, the one in force when it was added
 * @param film where the film is to be found, in words
 * @param closesOn last day it can be scored, on the programme's clock
 * @param closedAt when a director closed it before that; null when nobody did
 */
public record ReferenceCase(
        UUID id,
        UUID programmeId,
        String reference,
        String title,
        UUID rubricId,
        Band band,
        String film,
        LocalDate closesOn,
        @Nullable Instant closedAt) {

    /** Whether nobody can score it any more on this day of the programme's clock. */
    public boolean closed(LocalDate today) {
        return closedAt != null || today.isAfter(closesOn);
    }
}
