package org.scrubline.audit;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Audited;
import org.scrubline.platform.Role;

/**
 * One thing that was done or one record that was read.
 *
 * @param sequence grows with time within an organisation; may leave numbers out
 * @param actor null for the server itself
 * @param roles what the actor was then
 * @param reason the reason given, or the purpose a visitor was let in for
 * @param before value before, or the hash of a text
 * @param sessionHash SHA-256 of the session's id
 * @param address network address, {@code system} for the server's own work
 */
public record AuditEntry(
        long sequence,
        Instant at,
        @Nullable Instant deviceAt,
        String action,
        @Nullable Named actor,
        List<Role> roles,
        @Nullable Named onBehalfOf,
        @Nullable Named about,
        Audited.Item item,
        @Nullable String reason,
        @Nullable String before,
        @Nullable String after,
        @Nullable String sessionHash,
        String address,
        String appVersion) {

    /** A person by printed name. */
    public record Named(UUID id, String name) {}

    public AuditEntry {
        roles = List.copyOf(roles);
    }
}
