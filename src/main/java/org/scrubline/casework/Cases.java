package org.scrubline.casework;

import java.util.List;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.SignedIn;

/** Logs and reads cases. Reading answers {@code NotFound} for a case the person has no part in. */
public interface Cases {

    /**
     * Logs a case that has ended and opens one sheet for the supervisor named.
     *
     * @return the case, or every reason why not; nothing is stored then
     */
    Attempt<SurgicalCase> log(SignedIn who, CaseEntry entry);

    /** Any case of the organisation, for rooms that have checked the person's right themselves. */
    SurgicalCase get(UUID id);

    /** What a trainee claimed to have done in a case. */
    Part claimedPart(UUID caseId, UUID traineeId);

    /** Cases a trainee took part in, newest first, with how far their sheets are. */
    List<TraineeCase> ofTrainee(UUID traineeId);

    /** Confirmed and unconfirmed cases of a procedure in which the trainee operated, signed or not. */
    int operated(UUID traineeId, String procedureCode);
}
