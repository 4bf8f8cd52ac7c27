package org.scrubline.rubric.change;

import java.time.Instant;
import java.util.UUID;

/**
 * What a second person said about one text of a draft.
 *
 * @param sourceHash SHA-256 of that text; a later text is another
 * @param contentHash SHA-256 of the canonical rubric it says
 * @param agrees whether it can be published as it is
 */
public record RubricReview(
        UUID id,
        UUID draftId,
        String sourceHash,
        String contentHash,
        boolean agrees,
        String words,
        UUID reviewerId,
        String reviewerName,
        Instant reviewedAt) {}
