package org.scrubline.casework;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What the server has of one content a device sent.
 *
 * @param hash SHA-256 of the content
 * @param caseId the case it became; null while it waits for a person, and when that person put it away
 * @param reference of that case, else the one that was sent
 * @param aside why it was not entered at once; null when it was
 */
public record CaseReceipt(
        String hash,
        @Nullable UUID caseId,
        String reference,
        @Nullable Aside aside) {

    /** Why a case waits for a person. */
    public enum Aside {
        /** Another content was entered under the same id before. */
        OTHER_CONTENT,
        /** Its end was later than the server's clock allows. */
        END_AHEAD
    }
}
