package org.scrubline.casework;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A case a device sent that waits for its trainee to decide.
 *
 * @param reference of the case, as sent
 * @param content the answers as sent, canonical JSON
 * @param enteredAs reference of the case the first content of the same id became; null where there is none
 */
public record CaseAside(
        UUID id,
        UUID programmeId,
        String reference,
        String content,
        CaseReceipt.Aside why,
        Instant receivedAt,
        @Nullable String enteredAs) {}
