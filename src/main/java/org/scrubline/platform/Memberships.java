package org.scrubline.platform;

import java.util.Optional;
import java.util.UUID;

/** Answers, for every request, who an account is in an organisation now. Implemented where people are kept. */
public interface Memberships {

    /** The person and current roles, or empty when the account no longer has access to that organisation. */
    Optional<SignedIn> find(UUID accountId, UUID tenantId);

    /**
     * The person invited with one account, which nobody ever entered, is entered with another from now on. Within the scope
     * of their organisation.
     */
    SignedIn enteredWith(UUID invitedAccount, UUID ownAccount);
}
