package org.scrubline.casework.web;

import java.util.UUID;
import org.scrubline.platform.CanonicalJson;

/**
 * The id of the event a tap records. Made of the ids of sheet and tap, so that the device that made the tap knows it
 * before the server does and can take the event back while both wait.
 */
final class TapEvent {

    private TapEvent() {}

    /** Hexadecimal digits of the SHA-256 of {@code sheet:tap}, as a UUID of version 4. */
    static UUID id(UUID sheet, UUID tap) {
        String hash = CanonicalJson.sha256(sheet + ":" + tap);
        return UUID.fromString(String.join(
                "-",
                hash.substring(0, 8),
                hash.substring(8, 12),
                "4" + hash.substring(13, 16),
                "a" + hash.substring(17, 20),
                hash.substring(20, 32)));
    }
}
