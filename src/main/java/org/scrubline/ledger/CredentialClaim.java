package org.scrubline.ledger;

import org.jspecify.annotations.Nullable;
import org.scrubline.platform.CredentialUsed;

/**
 * What a signed record says of its signer's credential.
 *
 * @param hash what a passkey must have signed, SHA-256 in lower-case hexadecimal; empty when the record cannot say
 * @param credential null when the record names none, as one written without asking
 */
public record CredentialClaim(String hash, @Nullable CredentialUsed credential) {

    /** Whether a passkey's assertion must lie under the record. */
    public boolean namesPasskey() {
        return credential != null && credential.kind() == CredentialUsed.Kind.PASSKEY;
    }
}
