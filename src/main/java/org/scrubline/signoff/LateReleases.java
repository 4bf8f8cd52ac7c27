package org.scrubline.signoff;

import java.util.List;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Credential;
import org.scrubline.platform.SignedIn;

/** Lets single sheets be signed that stayed unsigned too long. */
public interface LateReleases {

    /** Longest reason in characters. */
    int REASON_LENGTH = 500;

    /** Unsigned sheets closed by time in the programmes this person directs, released or not, longest ago first. */
    List<ClosedSheet> closed(SignedIn director);

    /**
     * One of them.
     *
     * @throws org.scrubline.platform.NotFound when it is none, or not this director's
     */
    ClosedSheet closed(SignedIn director, UUID sheetId);

    /**
     * Releases a sheet with a password typed anew, or with a passkey that signs the {@link Intent}; sent again, the first release is answered. Reason, name and time go
     * into the signed record.
     *
     * @return the release, or why not; the fields are {@code reason} and those of the credential
     * @throws org.scrubline.platform.NotFound as {@link #closed(SignedIn, UUID)}
     */
    Attempt<LateRelease> release(SignedIn director, UUID sheetId, String reason, Credential credential);
}
