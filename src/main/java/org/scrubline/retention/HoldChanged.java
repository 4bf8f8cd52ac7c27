package org.scrubline.retention;

import java.util.UUID;
import org.scrubline.platform.Audited;

/**
 * A hold was set or ended.
 *
 * @param action {@code hold-set} or {@code hold-ended}
 */
record HoldChanged(String action, UUID actor, UUID about, UUID programme, Item item, String reason) implements Audited {

    static HoldChanged of(String action, UUID actor, RecordHold hold) {
        return new HoldChanged(
                action,
                actor,
                hold.trainee().id(),
                hold.programmeId(),
                new Item("hold", hold.id(), null, ""),
                hold.reason());
    }
}
