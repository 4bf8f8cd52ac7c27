package org.scrubline.people;

import java.util.UUID;
import org.scrubline.platform.Audited;
import org.scrubline.platform.Role;

/**
 * A person was added with a first role, or given one more.
 *
 * @param action {@code person-added} or {@code role-given}
 * @param about the person
 */
record RoleGiven(String action, UUID about, UUID programme, String name, Role role) implements Audited {

    @Override
    public Item item() {
        return new Item("person", about, null, name);
    }

    @Override
    public String after() {
        return role.name();
    }
}
