package org.scrubline.rubric.change;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Audited;

/**
 * Something was done about a rubric.
 *
 * @param action such as {@code rubric-reviewed}
 * @param actor who did it
 * @param reason the words given for it, or null
 * @param after what holds now, such as a day or a hash, or null
 */
public record RubricDeed(
        String action,
        UUID actor,
        Item item,
        @Nullable String reason,
        @Nullable String after) implements Audited {

    /** What it was done to, as {@link Audited.Item} has it. */
    public static Item item(UUID id, String label) {
        return new Item("rubric", id, null, label);
    }
}
