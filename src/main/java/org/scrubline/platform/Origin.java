package org.scrubline.platform;

import org.jspecify.annotations.Nullable;

/**
 * Where the work at hand comes from.
 *
 * @param person who sent the request, or null before log-in and outside a request
 * @param sessionHash SHA-256 of the session's id, or null without a session
 * @param address network address of the sender; {@link #SYSTEM} outside a request
 * @param version version of this program
 */
public record Origin(@Nullable SignedIn person, @Nullable String sessionHash, String address, String version) {

    /** The address of the server's own work. */
    public static final String SYSTEM = "system";
}
