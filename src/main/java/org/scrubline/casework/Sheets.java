package org.scrubline.casework;

import java.util.List;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;

/** Reads and changes score sheets while they are drafts. */
public interface Sheets {

    /** Any sheet of the organisation, for rooms that have checked the person's right themselves. */
    Sheet get(UUID id);

    /**
     * Keeps everyone else from changing a sheet or the facts of its case until the caller's transaction ends, waiting for
     * those who do so now, and reads it.
     */
    Sheet hold(UUID id);

    /** The scorer's own open sheet, or the one this person writes the next version of; {@code NotFound} for anyone else. */
    Sheet openFor(SignedIn scorer, UUID id);

    /** What this person may write on: open sheets and new versions, oldest case first. */
    List<OpenSheet> toScore(UUID scorerId);

    /**
     * Applies one change to the scorer's open sheet, durably before it returns.
     *
     * @param onVersion the lock version the change was made on
     * @return the sheet after the change, or why it was refused
     * @throws org.scrubline.platform.StaleData when the sheet has moved on in the meantime
     */
    Attempt<Sheet> change(SignedIn scorer, UUID id, int onVersion, SheetChange change);

    /** What {@link #change} would refuse of this change now; nothing is stored. */
    List<Refusal> against(SignedIn scorer, UUID id, SheetChange change);

    /**
     * The same for a change sent under an id of its own: sent again, it is answered and not applied again.
     *
     * @param tapId made by the sender, one for each thing done
     * @return the sheet under the version this tap made, even if it was sent before and the sheet has moved on since
     */
    Attempt<Sheet> tap(SignedIn scorer, UUID id, UUID tapId, int onVersion, SheetChange change);

    /** What is there of a sheet this person writes on or has signed; {@code NotFound} for anyone else. */
    SheetReceipt receipt(SignedIn scorer, UUID id);

    /**
     * Closes a sheet, or the version written on it, as signed, inside the signer's transaction.
     *
     * @return false when it was not open on that version any more
     */
    boolean markSigned(UUID id, int onVersion);
}
