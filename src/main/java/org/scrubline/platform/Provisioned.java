package org.scrubline.platform;

import java.util.Optional;
import java.util.UUID;

/** Accounts the directory of an organisation opened. Implemented where directories are spoken to. */
public interface Provisioned {

    /**
     * The open account it opened for somebody in the organisation of the scope.
     *
     * @param externalId the directory's own name for the person
     */
    Optional<UUID> account(String externalId);
}
