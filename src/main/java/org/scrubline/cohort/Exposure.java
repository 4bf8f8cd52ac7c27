package org.scrubline.cohort;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.Part;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.people.Person;
import org.scrubline.people.Programme;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Family;

/** Cases done beside cases planned, for directors, committee members and administrators of a programme. */
public interface Exposure {

    /**
     * One trainee and one family of procedures something is planned for.
     *
     * @param months training months that are over
     * @param planned cases planned for these months at the share worked; parts of a case are possible
     * @param done cases operated so far, in whole or in part, signed or not
     * @param unsigned of these, those with a sheet nobody signed
     * @param behind whole cases behind the plan; 0 when not, or when it is too early to say
     */
    record Line(Person trainee, Family family, int months, double planned, int done, int unsigned, int behind) {}

    /**
     * A programme's exposure.
     *
     * @param planned whether the programme has a plan at all
     * @param lines by name of the trainee and in the order of families; trainees of now with a placement
     * @param unplaced trainees of now without a placement, about whom nothing can be said
     */
    record Report(Programme programme, boolean planned, List<Line> lines, List<Person> unplaced, Instant at) {

        public Report {
            lines = List.copyOf(lines);
            unplaced = List.copyOf(unplaced);
        }
    }

    /**
     * A case a number of the report counts.
     *
     * @param unsigned sheets about this trainee nobody signed
     */
    record Done(SurgicalCase surgicalCase, Part part, int unsigned) {}

    /**
     * The cases behind the numbers of one line.
     *
     * @param cases newest first
     */
    record LineCases(Programme programme, Person trainee, Family family, List<Done> cases) {

        public LineCases {
            cases = List.copyOf(cases);
        }
    }

    /**
     * Reads it.
     *
     * @param programmeId null for the first the person may read
     * @throws org.scrubline.platform.NotFound when there is no such programme for this person
     */
    Report report(SignedIn who, @Nullable UUID programmeId);

    /**
     * Reads what one line counts.
     *
     * @param programmeId as for {@link #report}
     * @throws org.scrubline.platform.NotFound as there, and when the programme has no such trainee now
     */
    LineCases cases(SignedIn who, @Nullable UUID programmeId, UUID trainee, Family family);
}
