package org.scrubline.platform;

import java.util.UUID;

/** Somebody's account was logged in to from a kind of device for the first time. */
public record NewDevice(SignedIn owner, Device device) implements Audited {

    @Override
    public String action() {
        return "new-device";
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

    @Override
    public String after() {
        return device.text();
    }
}
