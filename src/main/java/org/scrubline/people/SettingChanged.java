package org.scrubline.people;

import java.util.UUID;
import org.scrubline.platform.Audited;
import org.scrubline.platform.SignedIn;

/** A programme works by another number from now on. */
record SettingChanged(SignedIn who, UUID programme, SettingChange change, int from) implements Audited {

    @Override
    public String action() {
        return "setting-changed";
    }

    @Override
    public Item item() {
        return new Item("programme-setting", change.id(), null, change.key().name());
    }

    @Override
    public UUID actor() {
        return who.personId();
    }

    @Override
    public String reason() {
        return change.reason();
    }

    @Override
    public String before() {
        return String.valueOf(from);
    }

    @Override
    public String after() {
        return String.valueOf(change.value());
    }
}
