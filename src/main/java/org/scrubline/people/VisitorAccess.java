package org.scrubline.people;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.people.NamedRecords.NamedRecord;

/**
 * What a director opened to a visitor: named records, for a named purpose, for a time.
 *
 * @param until first instant at which it is closed
 * @param endedAt when a director ended it early, or null
 * @param trainees whose signed records and numbers it opens
 * @param records single signed records it opens
 */
public record VisitorAccess(
        UUID id,
        UUID programmeId,
        Person visitor,
        String purpose,
        Instant from,
        Instant until,
        String givenBy,
        @Nullable Instant endedAt,
        @Nullable String endedBy,
        List<Person> trainees,
        List<NamedRecord> records) {

    public VisitorAccess {
        trainees = List.copyOf(trainees);
        records = List.copyOf(records);
    }

    /** Whether it opens anything at this instant. */
    public boolean open(Instant now) {
        return endedAt == null && !now.isBefore(from) && now.isBefore(until);
    }

    /** Whether it names this trainee. */
    public boolean namesTrainee(UUID traineeId) {
        return trainees.stream().anyMatch(trainee -> trainee.id().equals(traineeId));
    }

    /** Whether it names this signed record. */
    public boolean namesRecord(UUID recordId) {
        return records.stream().anyMatch(one -> one.id().equals(recordId));
    }
}
