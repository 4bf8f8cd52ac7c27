package org.scrubline.platform;

import java.util.UUID;

/** Someone who has just shown a right credential, and which kind it was. */
public sealed interface Recognised {

    UUID accountId();

    /** What a signed record says about the credential. */
    CredentialUsed used();

    /** By a password, of which nothing may be kept. */
    record ByPassword(UUID accountId) implements Recognised {
        @Override
        public CredentialUsed used() {
            return new CredentialUsed(CredentialUsed.Kind.PASSWORD, null);
        }
    }

    /** By a passkey; its signature can be verified again by anyone at any time. */
    record ByPasskey(UUID accountId, Assertion assertion) implements Recognised {
        @Override
        public CredentialUsed used() {
            return new CredentialUsed(CredentialUsed.Kind.PASSKEY, assertion.hash());
        }
    }
}
