package org.scrubline.casework;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.CanonicalJson;

/**
 * A case as a device sends it.
 *
 * @param id made on the device
 * @param content the answers and who gave them, as canonical JSON
 * @param kept what the device's clocks said
 */
public record CaseSubmission(UUID id, String content, Kept kept) {

    /**
     * When the case was kept on the device.
     *
     * @param at by the device's own clock, which may be wrong
     * @param zone the device's own zone, as it calls it
     * @param pageMillis from the start of the page to keeping, by a clock nobody can set
     * @param waitedMillis from keeping to sending by the same clock; null when the page was started anew in between
     */
    public record Kept(
            Instant at,
            String zone,
            long pageMillis,
            @Nullable Long waitedMillis) {}

    /** SHA-256 of the content, lower-case hexadecimal. */
    public String hash() {
        return CanonicalJson.sha256(content);
    }
}
