package org.scrubline.ledger;

import org.jspecify.annotations.Nullable;
import org.scrubline.platform.CredentialUsed;
import tools.jackson.databind.JsonNode;

/**
 * What a signed record says of its signer's credential.
 *
 * @param hash what a passkey must have signed, SHA-256 in lower-case hexadecimal; empty when the record cannot say
 * @param credential null when the record names none, as one written without asking
 */
public record CredentialClaim(String hash, @Nullable CredentialUsed credential) {

    /**
     * What a signed text says under {@code credential}; a kind nobody knows is none.
     *
     * @param hash what a passkey must have signed
     * @param content the signed text as a tree
     */
    public static CredentialClaim said(String hash, JsonNode content) {
        JsonNode used = content.path("credential");
        JsonNode assertion = used.path("assertionHash");
        return switch (used.path("kind").asString("")) {
            case "PASSKEY" ->
                new CredentialClaim(hash, new CredentialUsed(CredentialUsed.Kind.PASSKEY, assertion.asString("")));
            case "PASSWORD" -> new CredentialClaim(hash, new CredentialUsed(CredentialUsed.Kind.PASSWORD, null));
            default -> new CredentialClaim(hash, null);
        };
    }

    /** Whether a passkey's assertion must lie under the record. */
    public boolean namesPasskey() {
        return credential != null && credential.kind() == CredentialUsed.Kind.PASSKEY;
    }
}
