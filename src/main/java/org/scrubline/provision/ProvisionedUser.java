package org.scrubline.provision;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A person of the organisation with a log-in of their own, as its directory sees them.
 *
 * @param id the person
 * @param account their log-in account
 * @param externalId the directory's own name for them, or null
 * @param username log-in name; given once
 * @param printedName name on signatures; given once
 * @param active whether they may enter
 */
public record ProvisionedUser(
        UUID id,
        UUID account,
        @Nullable String externalId,
        String username,
        String printedName,
        boolean active,
        Instant createdAt,
        Instant changedAt) {}
