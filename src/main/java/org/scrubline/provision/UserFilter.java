package org.scrubline.provision;

import org.jspecify.annotations.Nullable;

/**
 * Whom a directory asks for; null asks for everybody.
 *
 * @param username log-in name, compared without case
 * @param externalId compared exactly
 */
public record UserFilter(
        @Nullable String username, @Nullable String externalId) {

    public static final UserFilter NONE = new UserFilter(null, null);
}
