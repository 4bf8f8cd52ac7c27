package org.scrubline.casework;

import java.util.List;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.SignedIn;

/**
 * Notes trainees write for themselves. Nobody else reads them: they are in no frozen evidence and no number, and every
 * method answers for the person who asks alone.
 */
public interface Reflections {

    /** Longest note in characters. */
    int LENGTH = 2_000;

    /** Own notes, newest first. */
    List<Reflection> of(SignedIn who);

    /**
     * Keeps a note.
     *
     * @param procedure code of a published procedure; empty for training as a whole
     * @param step code of a step of it; empty for none in particular
     * @param note as typed
     * @return its id, or why it was not kept; the field is {@code note}
     * @throws org.scrubline.platform.NotFound for whoever is no trainee, and for an unknown procedure or step
     */
    Attempt<UUID> write(SignedIn who, String procedure, String step, String note);

    /**
     * Takes a note away for good.
     *
     * @throws org.scrubline.platform.NotFound unless it is the person's own
     */
    void remove(SignedIn who, UUID id);
}
