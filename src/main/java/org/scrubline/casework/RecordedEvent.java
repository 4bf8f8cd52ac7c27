package org.scrubline.casework;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.rubric.TakeoverReason;

/**
 * An event of the catalogue that happened in a case.
 *
 * @param stepCode the step it happened on; null when it belongs to none
 * @param reason reason of a takeover; null for every other event
 * @param actionTaken what was done about it; empty when nothing was written
 */
public record RecordedEvent(
        UUID id,
        String eventCode,
        @Nullable String stepCode,
        @Nullable TakeoverReason reason,
        String actionTaken,
        Instant recordedAt) {}
