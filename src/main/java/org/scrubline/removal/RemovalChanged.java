package org.scrubline.removal;

import java.util.Set;
import java.util.UUID;
import org.scrubline.platform.Audited;
import org.scrubline.platform.Role;

/**
 * The removal of a trainee's records was asked for or done.
 *
 * @param action {@code removal-asked} or {@code records-removed}
 */
record RemovalChanged(String action, RemovalStore.Said said, UUID programme, UUID about, String reason)
        implements Audited {

    @Override
    public Item item() {
        return new Item("removal", said.id(), null, "");
    }

    @Override
    public UUID actor() {
        return said.who().personId();
    }

    @Override
    public Set<Role> roles() {
        return Set.of(said.role());
    }
}
