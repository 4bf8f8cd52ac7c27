package org.scrubline.signoff;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.scrubline.signoff.SignedContent.DeviceTime;

/**
 * When a signature was made and when the server had it, both in whole milliseconds.
 *
 * @param device null when it was made in front of the server
 */
record SigningTime(Instant at, Instant receivedAt, @Nullable DeviceTime device) {

    static SigningTime here(Instant now) {
        return new SigningTime(now, now, null);
    }
}
