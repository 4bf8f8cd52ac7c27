package org.scrubline.casework.reference;

import java.util.UUID;
import org.scrubline.platform.Audited;

/** A reference case was added, closed before its day, or scored by somebody. What was said stands nowhere here. */
record ReferenceChanged(String action, UUID actor, ReferenceCase reference) implements Audited {

    @Override
    public Item item() {
        return new Item("reference-case", reference.id(), null, reference.reference());
    }

    @Override
    public UUID programme() {
        return reference.programmeId();
    }
}
