package org.scrubline.removal;

import java.util.UUID;
import org.scrubline.platform.CanonicalJson;

/**
 * What a passkey signs for a removal.
 *
 * @param schema {@link #SCHEMA}, the name and version of this form
 * @param subject the trainee when it is asked for, the request when it is confirmed
 */
public record RemovalIntent(String schema, Act act, UUID subject) {

    /** Name and version of this form. */
    public static final String SCHEMA = "scrubline-removal/1";

    /** What is done. */
    public enum Act {
        REMOVAL_ASKED,
        REMOVAL_CONFIRMED
    }

    public static RemovalIntent of(Act act, UUID subject) {
        return new RemovalIntent(SCHEMA, act, subject);
    }

    /** SHA-256 of its canonical JSON, the 32 bytes of a passkey's challenge. */
    public byte[] challenge() {
        return CanonicalJson.hashBytes(hash());
    }

    String hash() {
        return CanonicalJson.sha256(CanonicalJson.of(this));
    }
}
