package org.scrubline.training;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Role;

/**
 * One entry of a training record.
 *
 * @param exercise what was practised; null for every other kind
 * @param day the day it is about
 * @param said in words; may be empty for practice
 * @param answer null while nobody answered, and for all that needs no answer
 */
public record TrainingEntry(
        UUID id,
        UUID programmeId,
        UUID traineeId,
        TrainingKind kind,
        @Nullable Exercise exercise,
        LocalDate day,
        String said,
        Author author,
        @Nullable TrainingAnswer answer) {

    /** Who wrote it, in which role, when. */
    public record Author(UUID id, String name, Role role, Instant at) {}

    /** Whether it is practice the trainee entered and nobody answered. */
    public boolean waits() {
        return kind == TrainingKind.WET_LAB && author.role() == Role.TRAINEE && answer == null;
    }

    /** Whether it is practice a supervisor saw: written by one, or confirmed by one. */
    public boolean signedOff() {
        return kind == TrainingKind.WET_LAB
                && (author.role() == Role.SUPERVISOR || (answer != null && answer.confirmed()));
    }

    /** The same with what was known at an instant; null when it was not written yet. */
    @Nullable
    TrainingEntry knownAt(Instant instant) {
        if (author.at().isAfter(instant)) {
            return null;
        }
        return answer != null && answer.at().isAfter(instant) ? with(said, null) : this;
    }

    /** The same without its text, for those who may know that it exists. */
    TrainingEntry withoutText() {
        return with("", answer);
    }

    private TrainingEntry with(String text, @Nullable TrainingAnswer then) {
        return new TrainingEntry(id, programmeId, traineeId, kind, exercise, day, text, author, then);
    }
}
