package org.scrubline.rubric;

import java.util.List;
import java.util.NoSuchElementException;
import org.jspecify.annotations.Nullable;

/** The events a sheet can record; blocking is a property of the entry, except for the takeover. */
public record EventCatalogue(List<EventKind> kinds) {

    /** Code of the takeover, the one event whose blocking depends on its reason. */
    public static final String TAKEOVER = "TAKEOVER";

    /** Code of a sponge left behind, or a count that does not come out even. */
    public static final String SPONGE_RETAINED = "SPONGE_RETAINED";

    public EventCatalogue {
        kinds = List.copyOf(kinds);
    }

    /**
     * The event with this code.
     *
     * @throws NoSuchElementException when the catalogue has no such event
     */
    public EventKind kind(String code) {
        return kinds.stream()
                .filter(kind -> kind.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new NoSuchElementException("No event " + code));
    }

    /**
     * Whether a recorded event blocks "independent on this case".
     *
     * @param reason reason of a takeover, null for every other event
     * @throws NoSuchElementException when the catalogue has no such event
     */
    public boolean blocks(String code, @Nullable TakeoverReason reason) {
        return kind(code).blocking() || (code.equals(TAKEOVER) && reason == TakeoverReason.SAFETY);
    }
}
