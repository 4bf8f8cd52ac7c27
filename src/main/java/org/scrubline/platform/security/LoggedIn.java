package org.scrubline.platform.security;

import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.scrubline.platform.Audited;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;

/** Somebody entered the organisation with name and password. */
record LoggedIn(SignedIn person) implements Audited {

    @Override
    public String action() {
        return "logged-in";
    }

    @Override
    public Item item() {
        return new Item("account", person.accountId(), null, person.username());
    }

    @Override
    public UUID actor() {
        return person.personId();
    }

    @Override
    public Set<Role> roles() {
        return person.grants().stream().map(SignedIn.Grant::role).collect(Collectors.toUnmodifiableSet());
    }
}
