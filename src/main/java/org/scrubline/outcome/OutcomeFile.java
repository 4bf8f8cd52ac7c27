package org.scrubline.outcome;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.scrubline.casework.SurgicalCase;

/**
 * The outcome of a case for those who may read it.
 *
 * @param entries all of them, also those put right, in the order they were entered
 * @param names of whoever entered something
 * @param trainees of the case
 * @param today by the clock of the case's site
 */
public record OutcomeFile(
        SurgicalCase surgicalCase,
        ZoneId zone,
        CaseOutcome outcome,
        List<OutcomeEntry> entries,
        Map<UUID, String> names,
        List<UUID> trainees,
        LocalDate today) {

    public OutcomeFile {
        entries = List.copyOf(entries);
        names = Map.copyOf(names);
        trainees = List.copyOf(trainees);
    }
}
