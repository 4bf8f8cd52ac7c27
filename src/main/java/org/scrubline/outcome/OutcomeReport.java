package org.scrubline.outcome;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.scrubline.people.Programme;
import org.scrubline.people.ProgrammeSettings;
import org.scrubline.rubric.Band;

/**
 * Outcomes of a programme by one definition.
 *
 * @param programmes all this person may choose from
 * @param all every case once
 * @param trainees by name; a case counts for each trainee who operated in it
 * @param early events of the first two weeks, of the cases about which something is known
 * @param care of the cases with a visit, those in which it was done at any time
 * @param operatorAlone cases with a visit in which nobody but the operator saw the eye
 */
public record OutcomeReport(
        Programme programme,
        List<Programme> programmes,
        ProgrammeOutcomes.Wish wish,
        ProgrammeSettings settings,
        SuccessCount all,
        List<TraineeOutcomes> trainees,
        Map<EarlyEvent, Tally> early,
        Map<Visit.Care, Tally> care,
        Tally operatorAlone,
        Instant at) {

    public OutcomeReport {
        programmes = List.copyOf(programmes);
        trainees = List.copyOf(trainees);
        early = Map.copyOf(early);
        care = Map.copyOf(care);
    }

    /**
     * One trainee.
     *
     * @param whole cases the trainee operated from beginning to end
     * @param bands cases by complexity band
     */
    public record TraineeOutcomes(UUID id, String name, SuccessCount count, int whole, Map<Band, Integer> bands) {

        public TraineeOutcomes {
            bands = Map.copyOf(bands);
        }
    }
}
