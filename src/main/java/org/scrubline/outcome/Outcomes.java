package org.scrubline.outcome;

import java.util.List;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.SignedIn;

/**
 * Reads and enters the outcome of one case. Trainees and supervisors of the case, and those who direct or administer its
 * programme; {@code NotFound} for everyone else, and for a case that has not ended or is not judged by its outcome.
 */
public interface Outcomes {

    OutcomeFile read(SignedIn who, UUID caseId);

    /**
     * Adds an entry. The same again by the same person changes nothing and gives the entry already there.
     *
     * @return the entry, or every reason why not; the fields are those of the content: {@code day}, {@code window},
     *     {@code since}, or none
     */
    Attempt<OutcomeEntry> enter(SignedIn who, UUID caseId, Entering entering);

    /** The same for several at one sitting: all of them, or none. There is at least one. */
    Attempt<List<OutcomeEntry>> enterAll(SignedIn who, UUID caseId, List<Entering> entering);
}
