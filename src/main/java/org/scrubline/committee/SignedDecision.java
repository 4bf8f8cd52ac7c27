package org.scrubline.committee;

import java.time.Instant;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.CredentialUsed;

/**
 * The whole of a signed decision. In canonical form the decided part is byte for byte the JSON its hash was made from.
 *
 * @param decided what the chair read
 * @param decidedHash SHA-256 of its canonical JSON, lower-case hexadecimal
 * @param credential what the chair was recognised by; null in a history written without asking, as in the demo programme
 */
public record SignedDecision(
        DecisionContent decided,
        String decidedHash,
        Instant signedAt,
        ZoneId signedZone,
        @Nullable CredentialUsed credential) {

    static SignedDecision read(String json) {
        return CanonicalJson.read(json, SignedDecision.class);
    }
}
