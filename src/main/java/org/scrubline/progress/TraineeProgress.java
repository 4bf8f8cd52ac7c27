package org.scrubline.progress;

import java.util.Comparator;
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

    /** The procedure with the most counted cases; the first of the list among equals. */
    public Optional<ProcedureProgress> mostPractised() {
        return procedures.stream()
                .max(Comparator.comparingInt((ProcedureProgress progress) ->
                                progress.evidence().cases().size())
                        .thenComparing(
                                Comparator.comparingInt(procedures::indexOf).reversed()));
    }

    public Optional<ProcedureProgress> procedure(String code) {
        return procedures.stream()
                .filter(progress -> progress.rubric().procedure().equals(code))
                .findFirst();
    }
}
