package org.scrubline.casework;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.scrubline.rubric.Step;

/**
 * Which steps of a trainee the signed sheets point to for today. Filled by the room that counts signed sheets, which this
 * one may not use. Counts and dates only: a supervisor learns no other scorer's name or words.
 */
public interface FocusSteps {

    /**
     * One step.
     *
     * @param scored how often it was scored
     * @param high how often at level 4 or 5
     * @param lastAt end of the last case in which it was scored
     */
    record Focus(Step step, int scored, int high, Instant lastAt) {}

    /** The weakest critical steps scored often enough to say so; empty while there are none. */
    List<Focus> of(UUID programmeId, UUID traineeId, String procedureCode);
}
