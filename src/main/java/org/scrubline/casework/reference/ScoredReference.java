package org.scrubline.casework.reference;

import java.util.List;
import org.scrubline.rubric.Rubric;

/** A closed reference case with everything supervisors said about it, by name of the supervisor. */
public record ScoredReference(ReferenceCase reference, Rubric rubric, List<ReferenceScoring> scorings) {

    public ScoredReference {
        scorings = List.copyOf(scorings);
    }
}
