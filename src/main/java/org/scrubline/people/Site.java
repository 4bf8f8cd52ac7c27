package org.scrubline.people;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A hospital or theatre where cases happen; {@code zone} is the zone of its clocks.
 *
 * @param closedOn the last day cases happen there; null while none is set. Its records stay.
 */
public record Site(
        UUID id,
        String code,
        String name,
        ZoneId zone,
        @Nullable LocalDate closedOn) {

    /** Whether a case may happen there on that day of its own calendar. */
    public boolean open(LocalDate day) {
        return closedOn == null || !day.isAfter(closedOn);
    }
}
