package org.scrubline.signoff;

import java.util.List;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.SignedIn;

/**
 * Signed sheets as one person may read them: the trainee, the signer, directors and committee members of the
 * programme, and whoever may countersign that one sheet or did. For everyone else they do not exist.
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

    /** The newest signed version of a sheet; throws as {@link #read}. */
    SignedSheet readSheet(SignedIn who, UUID sheetId);

    /** Whether this person signed a sheet, so that it can be read but no longer changed. */
    boolean signed(SignedIn who, UUID sheetId);

    /** What this person signed, newest signature first. */
    List<SignedLine> signedBy(UUID signerId);

    /** What was signed about this trainee, newest signature first. */
    List<SignedLine> about(UUID traineeId);

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
