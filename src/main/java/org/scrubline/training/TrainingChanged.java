package org.scrubline.training;

import java.util.UUID;
import org.scrubline.platform.Audited;

/**
 * A training record has one entry or one answer more.
 *
 * @param after the kind of the entry, or what the answer was
 */
record TrainingChanged(String action, UUID actor, TrainingEntry entry, String after) implements Audited {

    @Override
    public Item item() {
        return new Item("training-entry", entry.id(), null, entry.kind().name());
    }

    @Override
    public UUID about() {
        return entry.traineeId();
    }

    @Override
    public UUID programme() {
        return entry.programmeId();
    }
}
