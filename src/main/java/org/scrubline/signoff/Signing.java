package org.scrubline.signoff;

import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Credential;
import org.scrubline.platform.SignedIn;

/** Signs sheets. */
public interface Signing {

    /** Field of a refusal that no entry can mend: this person may not sign this sheet. */
    String AUTHORITY = "authority";

    /** Exactly what signing now would sign, and why it cannot be signed yet if so. */
    SigningPreview preview(SignedIn scorer, UUID sheetId);

    /**
     * Signs a sheet with a password typed anew, or with a passkey that signs the hash itself.
     *
     * <p>Signing the same content again answers the first signature. Refused, with nothing stored: a wrong password
     * or assertion, a statement not accepted, a blank step, own training, a declared conflict, a role that is gone, a shared log-in, a
     * closed account, a case that ended too long ago and was not released.
     *
     * @param contentHash the hash shown on the review page; another one means the sheet moved on
     * @throws org.scrubline.platform.StaleData when the sheet no longer has that content
     */
    Attempt<SignedSheet> sign(SignedIn scorer, UUID sheetId, String contentHash, Credential credential);

    /** What a device needs to have this sheet signed without a network; for nobody but its scorer. */
    TableSigning atTheTable(SignedIn scorer, UUID sheetId);

    /**
     * Signs a sheet with what a passkey signed on a device that had no network. Refused as {@link #sign}, but the age of
     * the case counts to the clock of the device where that can be relied on. The same signature sent again answers the
     * record it led to.
     *
     * @throws org.scrubline.platform.StaleData when the sheet is not what was signed, or was signed otherwise
     */
    Attempt<SignedSheet> signAtTheTable(SignedIn scorer, UUID sheetId, TableSignature signature);

    /** The same below the credential check, for history written by the demo programme. */
    Attempt<SignedSheet> signWithoutCredential(SignedIn scorer, UUID sheetId);
}
