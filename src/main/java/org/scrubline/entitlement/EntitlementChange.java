package org.scrubline.entitlement;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.rubric.Band;
import org.scrubline.rubric.Family;

/**
 * One change of what a trainee may do.
 *
 * @param bands at least one
 * @param level only of {@link Kind#DECIDED}
 * @param reviewOn by when the committee looks at it again; only of {@link Kind#DECIDED}
 * @param source the signed decision or statement it follows from
 * @param decidedBy who signed that
 */
public record EntitlementChange(
        UUID programmeId,
        UUID traineeId,
        Family family,
        Set<Band> bands,
        Kind kind,
        @Nullable EntitlementLevel level,
        @Nullable LocalDate reviewOn,
        UUID source,
        UUID decidedBy,
        Instant decidedAt) {

    /** What it does. */
    public enum Kind {
        /** The committee set a level; whatever was suspended before is over. */
        DECIDED,
        /** Nothing is allowed until it is reinstated or decided anew. */
        SUSPENDED,
        /** The level from before the suspension holds again. */
        REINSTATED
    }

    public EntitlementChange {
        bands = Set.copyOf(bands);
        if (bands.isEmpty()) {
            throw new IllegalArgumentException("a change concerns at least one band");
        }
        if ((kind == Kind.DECIDED) != (level != null) || (kind == Kind.DECIDED) != (reviewOn != null)) {
            throw new IllegalArgumentException("a decision, and nothing else, has a level and a review date");
        }
    }
}
