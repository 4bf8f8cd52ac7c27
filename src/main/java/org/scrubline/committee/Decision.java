package org.scrubline.committee;

import java.util.UUID;
import org.scrubline.platform.CanonicalJson;

/**
 * A stored decision.
 *
 * @param json canonical JSON of {@code signed}
 * @param hash SHA-256 of {@code json}
 */
public record Decision(UUID id, SignedDecision signed, String json, String hash) {

    static Decision of(SignedDecision signed) {
        String json = CanonicalJson.of(signed);
        return new Decision(UUID.randomUUID(), signed, json, CanonicalJson.sha256(json));
    }

    public DecisionContent content() {
        return signed.decided();
    }

    public UUID programmeId() {
        return content().programme().id();
    }

    public UUID traineeId() {
        return content().trainee().id();
    }
}
