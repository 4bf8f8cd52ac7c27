package org.scrubline.platform;

import java.util.UUID;

/**
 * An organisation was opened. Published inside the opening transaction, so a listener that fails undoes the opening.
 *
 * @param tenantId the new organisation
 * @param administratorId its first person
 */
public record OrganisationOpened(UUID tenantId, UUID administratorId) implements Audited {

    @Override
    public String action() {
        return "organisation-opened";
    }

    @Override
    public UUID actor() {
        return administratorId;
    }

    @Override
    public Item item() {
        return new Item("organisation", tenantId, null, "");
    }
}
