package org.scrubline.platform;

/**
 * A passkey's signature with everything needed to verify it again, by {@link AssertionCheck} or by any other
 * implementation of Web Authentication Level 3, section 7.2. Bytes are base64url without padding.
 *
 * @param challenge the 32 bytes that were signed: the hash of what was signed
 * @param credentialId of the passkey
 * @param publicKey of the passkey, a COSE_Key (RFC 9052)
 * @param algorithm of the key, a COSE algorithm number: -7, -8 or -257
 * @param authenticatorData bytes the passkey added: hash of the relying party, flags, counter
 * @param clientData JSON the browser added: type, challenge, origin
 * @param signature over authenticator data and SHA-256 of client data
 * @param rpId relying party, the host name passkeys are bound to
 * @param origin where the browser was, such as {@code https://host:8443}
 */
public record Assertion(
        String challenge,
        String credentialId,
        String publicKey,
        long algorithm,
        String authenticatorData,
        String clientData,
        String signature,
        String rpId,
        String origin) {

    /** SHA-256 of the canonical JSON of all of it, lower-case hexadecimal. */
    public String hash() {
        return CanonicalJson.sha256(CanonicalJson.of(this));
    }
}
