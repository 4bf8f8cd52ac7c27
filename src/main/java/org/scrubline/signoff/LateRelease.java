package org.scrubline.signoff;

import java.time.Instant;
import java.time.ZoneId;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.CredentialUsed;

/**
 * A director let one sheet be signed that had stayed unsigned too long; name and role are those of that time.
 *
 * @param credential what the director was recognised by; null in releases of before that was kept
 */
public record LateRelease(
        UUID id,
        UUID sheetId,
        UUID releasedBy,
        String releasedName,
        String releasedRole,
        String reason,
        Instant releasedAt,
        ZoneId releasedZone,
        @Nullable CredentialUsed credential) {

    /** What a passkey signs. */
    static Intent intent(UUID sheetId, String reason) {
        return Intent.of(RecordEvent.LATE_RELEASED, sheetId, "", reason);
    }
}
