package org.scrubline.people;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What a director asks to open to a visitor; parts that were not filled in are null or empty.
 *
 * @param from first day, by the programme's clock
 * @param until last day
 */
public record VisitorRequest(
        @Nullable UUID visitorId,
        String purpose,
        List<UUID> traineeIds,
        List<UUID> recordIds,
        @Nullable LocalDate from,
        @Nullable LocalDate until) {

    public VisitorRequest {
        traineeIds = List.copyOf(traineeIds);
        recordIds = List.copyOf(recordIds);
    }
}
