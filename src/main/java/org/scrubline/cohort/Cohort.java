package org.scrubline.cohort;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.people.Programme;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Rubric;

/** Reads a programme's cohort. Directors and committee members of the programme only; {@code NotFound} for others. */
public interface Cohort {

    /** The programmes this person may read, by name. */
    List<Programme> programmes(SignedIn who);

    /** The current rubric of each procedure, in the order of lists. */
    List<Rubric> procedures();

    /**
     * The cohort of one programme in one procedure.
     *
     * @param programmeId null for the first the person may read
     * @param procedure null for the first that is published
     * @throws org.scrubline.platform.NotFound when there is no such programme or procedure for this person
     */
    CohortReport report(SignedIn who, @Nullable UUID programmeId, @Nullable String procedure);
}
