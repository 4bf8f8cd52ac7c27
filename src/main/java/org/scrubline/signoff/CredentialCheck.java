package org.scrubline.signoff;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Assertion;
import org.scrubline.platform.AssertionCheck;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.CredentialUsed;

/**
 * Whether what is kept of the signer's credential fits the record. Needs the record's content and the kept assertion,
 * nothing else; that the content itself stands unchanged is the business of its hash and of the ledger.
 */
public final class CredentialCheck {

    private CredentialCheck() {}

    /** What does not fit. */
    public enum Fault {
        /** The record says it was signed with a passkey, and no assertion is kept. */
        MISSING,
        /** An assertion is kept under a record that was signed without one. */
        UNNAMED,
        /** The assertion is not the one the record was signed with. */
        EXCHANGED,
        /** The signature in it does not stand for what was reviewed. */
        INVALID
    }

    /**
     * The first thing that does not fit, if anything does.
     *
     * @param kept the assertion under the record; null when there is none
     */
    public static Optional<Fault> fault(SignedContent content, @Nullable Assertion kept) {
        CredentialUsed used = content.credential();
        boolean named = used != null && used.kind() == CredentialUsed.Kind.PASSKEY;
        if (kept == null) {
            return named ? Optional.of(Fault.MISSING) : Optional.empty();
        }
        if (used == null || !named) {
            return Optional.of(Fault.UNNAMED);
        }
        if (!kept.hash().equals(used.assertionHash())) {
            return Optional.of(Fault.EXCHANGED);
        }
        return AssertionCheck.fault(kept, CanonicalJson.hashBytes(content.reviewedHash()))
                .map(fault -> Fault.INVALID);
    }
}
