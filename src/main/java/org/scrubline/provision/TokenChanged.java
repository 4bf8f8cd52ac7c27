package org.scrubline.provision;

import java.util.UUID;
import org.scrubline.platform.Audited;

/**
 * An administrator made or ended a token of the directory.
 *
 * @param action {@code provision-token-made} or {@code provision-token-revoked}
 */
record TokenChanged(String action, UUID id, String label) implements Audited {

    @Override
    public Item item() {
        return new Item("provision-token", id, null, label);
    }
}
