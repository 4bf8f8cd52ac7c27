package org.scrubline.platform;

import org.jspecify.annotations.Nullable;

/**
 * Which credential a record was signed with, as part of what is signed, so that an assertion taken away, exchanged or
 * put under a record that had none is found.
 *
 * @param assertionHash {@link Assertion#hash} of the passkey's assertion; null for a password
 */
public record CredentialUsed(Kind kind, @Nullable String assertionHash) {

    /** A kind of credential. */
    public enum Kind {
        PASSWORD,
        PASSKEY
    }
}
