package org.scrubline.retention;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.people.Person;

/**
 * A hold on what is kept about a trainee.
 *
 * @param endedAt null while it holds
 */
public record RecordHold(
        UUID id,
        UUID programmeId,
        Person trainee,
        String reason,
        String setBy,
        Instant setAt,
        @Nullable String endedBy,
        @Nullable Instant endedAt) {}
