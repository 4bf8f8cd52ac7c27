package org.scrubline.signoff;

import java.util.List;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.SignedIn;

/**
 * Signed sheets as one person may read them: the trainee, the signers of any version, who reviews or reviewed a contest,
 * who may sign the next version, directors and committee members of the programme, whoever may
 * countersign that one sheet or did, and visitors while a director has
 * opened the sheet to them. For everyone else they do not exist.
 */
public interface SignedRecords {

    /** Longest remark in characters. */
    int REMARK_LENGTH = 2000;

    /**
     * A signed sheet, of whatever version.
     *
     * @throws org.scrubline.platform.NotFound when there is none or this person may not read it
     */
    SignedSheet read(SignedIn who, UUID id);

    /** The newest signed version of a sheet, void or not; throws as {@link #read}. */
    SignedSheet readSheet(SignedIn who, UUID sheetId);

    /** Whether this person signed a sheet and is not writing its next version, so that it can be read but not changed. */
    boolean signed(SignedIn who, UUID sheetId);

    /** What this person signed any version of and counts, newest signature first. */
    List<SignedLine> signedBy(UUID signerId);

    /** The same of what is void. */
    List<SignedLine> voidSignedBy(UUID signerId);

    /** What was signed about this trainee and counts, newest signature first. */
    List<SignedLine> about(UUID traineeId);

    /** The same of what is void. */
    List<SignedLine> voidAbout(UUID traineeId);

    /** Remarks under a sheet, oldest first, for a person who may read it. */
    List<Remark> remarks(UUID sheetId);

    /**
     * Adds the trainee's own remark. Sending the same words again keeps one.
     *
     * @return the remark, or why it cannot be kept
     * @throws org.scrubline.platform.NotFound for anyone but the trainee
     */
    Attempt<Remark> remark(SignedIn trainee, UUID id, String body);
}
