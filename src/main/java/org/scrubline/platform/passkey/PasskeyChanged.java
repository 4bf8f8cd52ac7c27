package org.scrubline.platform.passkey;

import java.util.UUID;
import org.scrubline.platform.Audited;
import org.scrubline.platform.Passkeys.Passkey;
import org.scrubline.platform.SignedIn;

/**
 * Somebody added or removed a passkey of theirs.
 *
 * @param action {@code passkey-added} or {@code passkey-removed}
 */
record PasskeyChanged(String action, SignedIn owner, Passkey key) implements Audited {

    @Override
    public Item item() {
        return new Item("passkey", key.id(), null, key.label());
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
