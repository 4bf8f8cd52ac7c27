package org.scrubline.platform.provider;

import java.util.UUID;
import org.scrubline.platform.Audited;
import org.scrubline.platform.SignedIn;

/**
 * Somebody connected their account with a provider, or took the connection away.
 *
 * @param action {@code provider-linked} or {@code provider-unlinked}
 * @param label the connection
 */
record SubjectChanged(String action, SignedIn owner, String label) implements Audited {

    @Override
    public Item item() {
        return new Item("account", owner.accountId(), null, label);
    }

    @Override
    public UUID actor() {
        return owner.personId();
    }

    @Override
    public UUID about() {
        return owner.personId();
    }
}
