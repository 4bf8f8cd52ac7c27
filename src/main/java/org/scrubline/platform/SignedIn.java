package org.scrubline.platform;

import java.io.Serializable;
import java.util.Set;
import java.util.UUID;

/**
 * The person behind a request, as read from the database for this request (never from an old session).
 *
 * @param accountId the log-in account
 * @param username the name typed at log-in
 * @param tenantId the organisation entered
 * @param organisationName its name
 * @param personId the person in that organisation
 * @param printedName the name as printed on signatures
 * @param grants current roles by programme
 */
public record SignedIn(
        UUID accountId,
        String username,
        UUID tenantId,
        String organisationName,
        UUID personId,
        String printedName,
        Set<Grant> grants)
        implements Serializable {

    /** One role in one programme. */
    public record Grant(UUID programmeId, Role role) implements Serializable {}

    public SignedIn {
        grants = Set.copyOf(grants);
    }

    public boolean has(Role role) {
        return grants.stream().anyMatch(grant -> grant.role() == role);
    }

    public boolean has(Role role, UUID programmeId) {
        return grants.contains(new Grant(programmeId, role));
    }
}
