package org.scrubline.demo.plan;

import java.time.Instant;
import java.util.List;
import org.scrubline.outcome.OutcomeEntry;

/** What somebody enters about the outcome of a case at one sitting. */
public record PlannedOutcome(Instant at, List<OutcomeEntry.Content> contents) {

    public PlannedOutcome {
        contents = List.copyOf(contents);
    }
}
