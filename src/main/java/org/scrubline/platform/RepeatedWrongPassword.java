package org.scrubline.platform;

import java.time.Instant;
import java.util.UUID;

/** Somebody logged in as this account re-entered a wrong password so often that it has to wait: a security event. */
public record RepeatedWrongPassword(UUID accountId, Instant at) implements Audited {

    @Override
    public String action() {
        return "wrong-passwords";
    }

    @Override
    public Item item() {
        return new Item("account", accountId, null, "");
    }
}
