package org.scrubline.platform.security;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Audited;
import org.scrubline.platform.SignedIn;

/**
 * Something about how an account is entered has changed. No code and no address stands here.
 *
 * @param action {@code password-changed}, {@code password-renewed} (with a code), {@code password-code-sent},
 *     {@code address-confirmed}, {@code address-removed} or {@code invitation-taken-up} (with a log-in there was)
 */
record AccountChanged(String action, SignedIn owner) implements Audited {

    @Override
    public Item item() {
        return new Item("account", owner.accountId(), null, owner.username());
    }

    /** Who asked for a code is not known. */
    @Override
    public @Nullable UUID actor() {
        return action.equals("password-code-sent") ? null : owner.personId();
    }

    @Override
    public UUID about() {
        return owner.personId();
    }
}
