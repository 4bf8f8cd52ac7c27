package org.scrubline.casework;

import java.time.Duration;
import java.time.Instant;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.SignedIn;

/**
 * Hands a sheet from the trainee's screen to the supervisor's own device by a short code: nobody scores on a device
 * somebody else is logged in on.
 */
public interface HandOffs {

    /** How long a code can be used. */
    Duration VALID = Duration.ofHours(12);

    /**
     * A code that opens one sheet once.
     *
     * @param code eight characters in two groups, shown and never stored
     */
    record Offer(UUID sheetId, String code, Instant expiresAt) {}

    /**
     * Makes a code for a sheet about this trainee on which nothing was said yet; an earlier code of the sheet is void.
     *
     * @throws org.scrubline.platform.NotFound unless it is the trainee's own sheet
     */
    Attempt<Offer> offer(SignedIn trainee, UUID sheetId);

    /**
     * Uses a code. The supervisor who was asked just goes on to the sheet; another supervisor of the programme becomes its
     * scorer, which is recorded as handed on.
     *
     * @param instead whether this supervisor takes it over from the one who was asked
     * @return id of the sheet
     */
    Attempt<UUID> take(SignedIn supervisor, String code, boolean instead);
}
