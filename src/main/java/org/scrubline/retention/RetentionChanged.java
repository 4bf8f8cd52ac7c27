package org.scrubline.retention;

import java.util.UUID;
import org.scrubline.platform.Audited;

/** A programme changed how long records are kept. */
record RetentionChanged(UUID actor, UUID programme, String before, String after) implements Audited {

    @Override
    public String action() {
        return "retention-changed";
    }

    @Override
    public Item item() {
        return new Item("retention", programme, null, "");
    }
}
