package org.scrubline.outcome;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.platform.Audited;

/**
 * Something was entered about the outcome of a case. The entry itself is no evidence anybody signed; its hash in the sealed
 * trail shows whether it is still what was entered.
 */
record OutcomeEntered(
        UUID actor,
        UUID about,
        UUID programme,
        Item item,
        @Nullable String after) implements Audited {

    static OutcomeEntered of(OutcomeEntry entry, SurgicalCase of, UUID trainee) {
        Item item = new Item("outcome", of.id(), entry.ordinal(), of.reference());
        return new OutcomeEntered(
                entry.enteredBy(), trainee, of.programmeId(), item, Audited.hash(EntryText.canonical(entry)));
    }

    @Override
    public String action() {
        return "outcome-entered";
    }
}
