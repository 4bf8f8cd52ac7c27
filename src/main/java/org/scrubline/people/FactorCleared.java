package org.scrubline.people;

import java.util.UUID;
import org.scrubline.platform.Audited;

/**
 * Somebody's second factor was asked to be taken away, was, or was not.
 *
 * @param action {@code factor-clearing-asked}, {@code factor-cleared} or {@code factor-clearing-dropped}
 * @param about whose it is
 * @param reason as the first administrator gave it
 */
public record FactorCleared(String action, UUID about, String name, String reason) implements Audited {

    /** What the owner is told of. */
    public boolean done() {
        return action.equals("factor-cleared");
    }

    @Override
    public Item item() {
        return new Item("person", about, null, name);
    }
}
