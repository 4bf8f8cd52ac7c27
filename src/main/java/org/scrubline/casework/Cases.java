package org.scrubline.casework;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;

/** Logs and reads cases. Reading answers {@code NotFound} for a case the person has no part in. */
public interface Cases {

    /**
     * Logs a case that has ended and opens one sheet for the supervisor named. Its complexity counts as set after the
     * case. A case without an end is planned instead: no sheet yet, and its complexity is set in time.
     *
     * @return the case, or every reason why not; nothing is stored then
     */
    Attempt<SurgicalCase> log(SignedIn who, CaseEntry entry);

    /** What {@link #log} would refuse of the answers given so far; nothing is stored. */
    List<Refusal> against(SignedIn who, CaseAnswers answers);

    /** A fresh random reference that no case of the programme has now. */
    String proposeReference(UUID programmeId);

    /** Any case of the organisation, for rooms that have checked the person's right themselves. */
    SurgicalCase get(UUID id);

    /**
     * A case as this person may see it: trainees and scorers of the case, and directors of its programme.
     *
     * @throws org.scrubline.platform.NotFound for everyone else
     */
    CaseFile open(SignedIn who, UUID id);

    /** The case of that reference, when there is one and this person may see it. */
    Optional<SurgicalCase> byReference(SignedIn who, UUID programmeId, String reference);

    /** What a trainee claimed to have done in a case. */
    Part claimedPart(UUID caseId, UUID traineeId);

    /** Cases a trainee took part in, newest first, with how far their sheets are. */
    List<TraineeCase> ofTrainee(UUID traineeId);

    /**
     * Ended cases of a programme, oldest first, one entry a trainee who took part; without those whose sheets are all
     * void.
     *
     * @param procedure as performed: what a converted case was converted to
     */
    List<EndedCase> ended(UUID programmeId, String procedure);

    /** What is open of those cases, by trainee; {@link OpenWork#NONE} is left out. */
    Map<UUID, OpenWork> openWork(UUID programmeId, String procedure);

    /**
     * Ended cases of a procedure in which the trainee operated, signed or not. A signed sheet's confirmed part replaces
     * the claim; a case of which every sheet is void, an abandoned or a planned one does not count.
     */
    int operated(UUID traineeId, String procedureCode);
}
