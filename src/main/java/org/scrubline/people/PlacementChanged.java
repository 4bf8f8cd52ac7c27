package org.scrubline.people;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Audited;

/**
 * A trainee was placed at a site, or a placement got an earlier last day.
 *
 * @param site its code
 */
record PlacementChanged(
        String action,
        UUID actor,
        UUID programme,
        Placement placement,
        String site,
        @Nullable String before,
        String after)
        implements Audited {

    @Override
    public Item item() {
        return new Item("placement", placement.id(), null, site);
    }

    @Override
    public UUID about() {
        return placement.traineeId();
    }
}
