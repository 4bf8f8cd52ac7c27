package org.scrubline.rubric.survey;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Set;
import java.util.UUID;
import org.scrubline.rubric.Rubric;

/**
 * Experts asked about the steps of one text of a rubric.
 *
 * @param rubric what they are asked about
 * @param keepPercent share of experts from which on the round speaks for keeping a step
 * @param closesAt from then on nobody answers any more and the result can be read
 * @param zone whose day ends then
 * @param experts who may answer
 * @param answered who did
 */
public record ExpertRound(
        UUID id,
        Rubric rubric,
        int keepPercent,
        String openedName,
        Instant openedAt,
        Instant closesAt,
        ZoneId zone,
        Set<UUID> experts,
        Set<UUID> answered) {

    public ExpertRound {
        experts = Set.copyOf(experts);
        answered = Set.copyOf(answered);
    }

    public boolean closed(Instant now) {
        return !now.isBefore(closesAt);
    }
}
