package org.scrubline.provision;

import java.util.UUID;
import org.scrubline.platform.Audited;

/**
 * The directory of the organisation opened or closed somebody's access.
 *
 * @param action {@code person-provisioned}, {@code person-closed} or {@code person-reopened}
 */
record PersonProvisioned(String action, UUID about, String name) implements Audited {

    @Override
    public Item item() {
        return new Item("person", about, null, name);
    }
}
