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

    /** The same below the credential check, for history written by the demo programme. */
    Attempt<SignedSheet> signWithoutCredential(SignedIn scorer, UUID sheetId);
}
