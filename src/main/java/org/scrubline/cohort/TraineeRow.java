package org.scrubline.cohort;

import java.time.Duration;
import java.time.Instant;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;
import org.scrubline.people.Person;
import org.scrubline.progress.ProcedureProgress;

/**
 * One trainee of the programme in one procedure.
 *
 * @param progress null while no signed sheet counts
 * @param waiting sheets about this trainee that are still open
 * @param lastCaseAt end of the last case operated in, signed or not; null when there is none
 */
public record TraineeRow(
        Person trainee,
        @Nullable ProcedureProgress progress,
        int waiting,
        @Nullable Instant lastCaseAt) {

    /** Cases that count. */
    public int cases() {
        return progress == null ? 0 : progress.evidence().cases().size();
    }

    /** Counted sheets the trainee contests and nobody has decided on. */
    public int contested() {
        return progress == null ? 0 : progress.evidence().contested();
    }

    /** Counted sheets that await their countersignature. */
    public int awaiting() {
        return progress == null ? 0 : progress.evidence().awaiting();
    }

    public int scorers() {
        return progress == null ? 0 : progress.evidence().scorers();
    }

    /** Whole days since the last case; empty when there is none. */
    public OptionalLong daysSince(Instant now) {
        return lastCaseAt == null
                ? OptionalLong.empty()
                : OptionalLong.of(Duration.between(lastCaseAt, now).toDays());
    }
}
