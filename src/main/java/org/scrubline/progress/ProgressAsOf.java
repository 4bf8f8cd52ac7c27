package org.scrubline.progress;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A trainee's numbers as they were known at an instant: versions, voids, contests, countersignatures, settings, declared
 * experience and population values of later do not exist yet. Asked again for the same instant the answer is the same,
 * to the last bit on the same kind of machine.
 */
public interface ProgressAsOf {

    /**
     * One procedure.
     *
     * @param fit id of the stored population values the curve rests on; null when none was stored by then and they were
     *     made from the records of that instant
     */
    record Known(
            ProcedureProgress progress,
            TraineeCurve curve,
            @Nullable UUID fit) {}

    /** Procedures with a counted case, in the order of lists. Whoever asks has settled who may read it. */
    List<Known> of(UUID programmeId, UUID traineeId, Instant knownAt);
}
