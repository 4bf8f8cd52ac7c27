package org.scrubline.platform.security;

import java.util.UUID;
import org.scrubline.platform.Audited;
import org.scrubline.platform.SignedIn;

/** Somebody chose a new password. */
record PasswordChanged(SignedIn owner) implements Audited {

    @Override
    public String action() {
        return "password-changed";
    }

    @Override
    public Item item() {
        return new Item("account", owner.accountId(), null, owner.username());
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
