package org.scrubline.committee;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.scrubline.entitlement.Entitlement;
import org.scrubline.people.Person;
import org.scrubline.people.Programme;
import org.scrubline.platform.SignedIn;

/** What waits to be done after decisions, and what is overdue, by programme. */
public interface Duties {

    /** A letter not given yet. */
    record Letter(UUID decisionId, Person trainee, LocalDate dueOn, boolean overdue) {}

    /** An appeal nobody has decided. */
    record OpenAppeal(UUID decisionId, Person trainee, LocalDate since, DecisionFile.Appeal state) {}

    /** What should be looked at again by a day in the past. */
    record Review(Person trainee, Entitlement entitlement) {}

    /**
     * One programme.
     *
     * @param appeals empty for an administrator, as are the rest
     */
    record OfProgramme(
            Programme programme,
            List<Letter> letters,
            List<OpenAppeal> appeals,
            List<Review> reviews,
            List<Suspensions.Gap> gaps) {}

    /** Of the programmes this person directs or administers. */
    List<OfProgramme> of(SignedIn who);
}
