package org.scrubline.casework.reference;

import java.time.Instant;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

/**
 * What one supervisor said about one reference case.
 *
 * @param name of the supervisor, as printed then
 * @param levels 1 to 5 by step code; at least one
 * @param notSeen codes of the other steps of the rubric
 * @param at server time
 */
public record ReferenceScoring(
        UUID id,
        UUID referenceCaseId,
        UUID scorerId,
        String name,
        Map<String, Integer> levels,
        Set<String> notSeen,
        Instant at) {

    public ReferenceScoring {
        levels = Map.copyOf(levels);
        notSeen = Set.copyOf(notSeen);
    }
}
