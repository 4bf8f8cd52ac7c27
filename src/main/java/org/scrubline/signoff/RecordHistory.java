package org.scrubline.signoff;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.scrubline.casework.Reopening;

/**
 * Everything that was signed on a sheet and said about it.
 *
 * @param versions oldest first, at least one
 * @param voids who asked for the record to be void, oldest first
 * @param contests oldest first
 * @param delegates who was named to sign new versions, oldest first
 * @param open the version being written, if any
 * @param writer printed name of who writes it, empty when nobody does
 * @param contestableUntil until when the trainee may contest the newest version
 * @param may what this reader may do now
 */
public record RecordHistory(
        List<SignedSheet> versions,
        List<VoidFile> voids,
        List<ContestFile> contests,
        List<Statement> delegates,
        Optional<Reopening> open,
        String writer,
        Instant contestableUntil,
        Set<RecordEvent> may) {

    public RecordHistory {
        versions = List.copyOf(versions);
        voids = List.copyOf(voids);
        contests = List.copyOf(contests);
        delegates = List.copyOf(delegates);
        may = Set.copyOf(may);
    }

    /** The newest signed version; it counts unless the record is void. */
    public SignedSheet newest() {
        return versions.get(versions.size() - 1);
    }

    /** The void that takes the record out of all numbers. */
    public Optional<VoidFile> voided() {
        return voids.stream().filter(VoidFile::confirmed).findFirst();
    }

    /** Somebody asked for the record to be void and nobody has decided. */
    public Optional<VoidFile> voidWaiting() {
        return voids.stream().filter(VoidFile::pending).findFirst();
    }

    /** How many versions are listed: a void is one, too. */
    public int count() {
        return versions.size() + (voided().isPresent() ? 1 : 0);
    }
}
