package org.scrubline.committee;

import java.time.Instant;
import java.util.UUID;
import org.scrubline.committee.pack.PackContent;

/**
 * Frozen evidence.
 *
 * @param json canonical JSON (RFC 8785) of a {@link PackContent}
 * @param hash SHA-256 of {@code json}, lower-case hexadecimal; the ledger fixes both
 */
public record Pack(
        UUID id, UUID meetingId, UUID traineeId, Instant cutOff, String json, String hash, Instant frozenAt) {

    public PackContent content() {
        return PackContent.read(json);
    }
}
