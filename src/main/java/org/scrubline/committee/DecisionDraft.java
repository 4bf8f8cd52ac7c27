package org.scrubline.committee;

import java.time.LocalDate;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.entitlement.EntitlementLevel;
import org.scrubline.rubric.Band;
import org.scrubline.rubric.Family;

/**
 * A decision as the chair writes it down; what is null or empty was left out.
 *
 * @param answered whether a level or "insufficient evidence" was chosen
 * @param level null when the answer is "insufficient evidence"
 * @param departing why it departs from what the evidence says
 * @param dissent what members who voted otherwise want recorded
 */
public record DecisionDraft(
        @Nullable Family family,
        Set<Band> bands,
        boolean answered,
        @Nullable EntitlementLevel level,
        @Nullable LocalDate reviewOn,
        String reasons,
        String departing,
        String dissent,
        Map<UUID, Vote> votes) {

    public DecisionDraft {
        bands = Set.copyOf(bands);
        votes = Map.copyOf(votes);
    }
}
