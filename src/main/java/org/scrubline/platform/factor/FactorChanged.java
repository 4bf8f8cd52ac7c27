package org.scrubline.platform.factor;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Audited;
import org.scrubline.platform.SignedIn;

/**
 * Something happened to somebody's second factor.
 *
 * @param action {@code code-app-added}, {@code code-app-removed}, {@code recovery-codes-made}, {@code recovery-code-used}
 *     or {@code wrong-codes}
 * @param after codes left, where it is about recovery codes
 */
record FactorChanged(
        String action, SignedIn owner, @Nullable String after) implements Audited {

    @Override
    public Item item() {
        return new Item("second-factor", owner.accountId(), null, owner.username());
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
