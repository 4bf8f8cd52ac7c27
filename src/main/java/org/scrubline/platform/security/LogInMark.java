package org.scrubline.platform.security;

import java.io.Serializable;
import java.time.Instant;
import org.scrubline.platform.Device;

/**
 * What a session remembers of the log-in that opened it.
 *
 * @param device as {@link Device#text}
 * @param address network address it came from
 */
record LogInMark(String device, String address, Instant at) implements Serializable {

    static final String ATTRIBUTE = "scrubline.log-in";
}
