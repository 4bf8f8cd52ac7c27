package org.scrubline.audit;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A stretch of a list of entries, newest first.
 *
 * @param newer where the stretch of newer entries ends, or null at the newest
 * @param older where the stretch of older entries begins, or null at the oldest
 */
public record AuditSlice(
        List<AuditEntry> entries,
        @Nullable Long newer,
        @Nullable Long older) {

    /** Where to read on: entries older than a number or newer than one; both null begins at the newest. */
    public record Place(@Nullable Long olderThan, @Nullable Long newerThan) {

        public static final Place NEWEST = new Place(null, null);

        public static Place olderThan(long sequence) {
            return new Place(sequence, null);
        }
    }

    public AuditSlice {
        entries = List.copyOf(entries);
    }
}
