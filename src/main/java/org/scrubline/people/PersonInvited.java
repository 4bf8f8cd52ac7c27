package org.scrubline.people;

import java.util.UUID;
import org.scrubline.platform.Audited;
import org.scrubline.platform.InvitationLife;

/**
 * A code was made by which a person comes in for the first time. The code stands nowhere.
 *
 * @param about the person
 */
record PersonInvited(UUID about, UUID programme, String name, InvitationLife life) implements Audited {

    @Override
    public String action() {
        return "person-invited";
    }

    @Override
    public Item item() {
        return new Item("person", about, null, name);
    }

    @Override
    public String after() {
        return life.name();
    }
}
