package org.scrubline.people;

import java.util.UUID;
import org.scrubline.platform.Audited;
import org.scrubline.platform.Role;

/**
 * A person holds a role no longer.
 *
 * @param about the person
 * @param reason as the administrator gave it
 */
record RoleEnded(UUID about, UUID programme, String name, Role role, String reason) implements Audited {

    @Override
    public String action() {
        return "role-ended";
    }

    @Override
    public Item item() {
        return new Item("person", about, null, name);
    }

    @Override
    public String after() {
        return role.name();
    }
}
