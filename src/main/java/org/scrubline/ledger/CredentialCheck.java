package org.scrubline.ledger;

import static java.util.Objects.requireNonNull;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Assertion;
import org.scrubline.platform.AssertionCheck;
import org.scrubline.platform.AssertionFault;
import org.scrubline.platform.Base64Url;
import org.scrubline.platform.CanonicalJson;

/**
 * Whether what is kept of the signer's credential fits the record. Needs what the record claims and the kept assertion,
 * nothing else; that the record itself stands unchanged is the business of its hash and of the ledger.
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
        /** The signature in it does not stand for what was signed. */
        INVALID
    }

    /**
     * The first thing that does not fit, if anything does.
     *
     * @param kept the assertion under the record; null when there is none
     */
    public static Optional<Fault> fault(CredentialClaim claim, @Nullable Assertion kept) {
        if (kept == null) {
            return claim.namesPasskey() ? Optional.of(Fault.MISSING) : Optional.empty();
        }
        return misplaced(claim, kept).or(() -> stands(kept) ? Optional.empty() : Optional.of(Fault.INVALID));
    }

    /** The same without the slow part, which is {@link #stands}. */
    public static Optional<Fault> misplaced(CredentialClaim claim, Assertion kept) {
        if (!claim.namesPasskey()) {
            return Optional.of(Fault.UNNAMED);
        }
        if (!kept.hash().equals(requireNonNull(claim.credential()).assertionHash())) {
            return Optional.of(Fault.EXCHANGED);
        }
        String signed = Base64Url.text(CanonicalJson.hashBytes(claim.hash()));
        return signed.equals(kept.challenge()) ? Optional.empty() : Optional.of(Fault.INVALID);
    }

    /** Whether it is a signature of the challenge it says it is of. */
    public static boolean stands(Assertion kept) {
        Optional<AssertionFault> fault;
        try {
            fault = AssertionCheck.fault(kept, Base64Url.bytes(kept.challenge()));
        } catch (IllegalArgumentException noBase64) {
            return false;
        }
        return fault.isEmpty();
    }
}
