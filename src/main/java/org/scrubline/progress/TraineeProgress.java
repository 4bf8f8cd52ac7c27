package org.scrubline.progress;

import java.util.List;
import java.util.Optional;
import org.scrubline.people.Person;

/**
 * One trainee's numbers, as far as the reader may see them.
 *
 * @param procedures those with a counted case, in the order of lists
 */
public record TraineeProgress(Person trainee, List<ProcedureProgress> procedures) {

    public TraineeProgress {
        procedures = List.copyOf(procedures);
    }

    public Optional<ProcedureProgress> procedure(String code) {
        return procedures.stream()
                .filter(progress -> progress.rubric().procedure().equals(code))
                .findFirst();
    }
}
