package org.scrubline.casework;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.SignedIn;

/**
 * What may still be said about a case after it was logged, by those who may see it. Once a sheet about it is signed, its
 * facts stay as they were signed. Each change is refused with a reason or made as a whole.
 */
public interface CaseChanges {

    /**
     * Says that a planned case has begun, which locks its complexity, and opens the sheet of the supervisor planned: times
     * can be taken on it from now on, and it is signed once the case has ended.
     */
    Attempt<SurgicalCase> start(SignedIn who, UUID caseId);

    /** Says that a case has ended, and opens the sheet of the supervisor planned unless it is open since the beginning. */
    Attempt<SurgicalCase> end(SignedIn who, UUID caseId, Instant endedAt);

    /** Says on which day at the site a planned case will be. */
    Attempt<SurgicalCase> plan(SignedIn who, UUID caseId, LocalDate day);

    /**
     * Keeps what a trainee of the case wants to work on, until a supervisor has signed.
     *
     * @param goal empty takes it back
     * @throws org.scrubline.platform.NotFound unless {@code who} is a trainee of this case
     */
    Attempt<SurgicalCase> setGoal(SignedIn who, UUID caseId, String goal);

    /** Asks one more supervisor to score a trainee's part of an ended case. */
    Attempt<UUID> askScorer(SignedIn who, UUID caseId, UUID traineeId, UUID supervisorId);

    /** Adds a second trainee, whose part is scored on an own sheet by the supervisor named. */
    Attempt<UUID> addTrainee(SignedIn who, UUID caseId, UUID traineeId, Part claimedPart, UUID supervisorId);

    /** Hands a sheet on which nothing was said yet to another supervisor. */
    Attempt<UUID> handOn(SignedIn who, UUID caseId, UUID sheetId, UUID supervisorId, String reason);

    /** Says that the operation was abandoned, and why. */
    Attempt<SurgicalCase> abandon(SignedIn who, UUID caseId, String reason);

    /** Says which procedure the operation became. */
    Attempt<SurgicalCase> convert(SignedIn who, UUID caseId, String procedureCode);
}
