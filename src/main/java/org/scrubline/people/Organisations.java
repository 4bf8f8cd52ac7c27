package org.scrubline.people;

import java.util.UUID;

/** Opens organisations. The only service that works before a tenant scope exists. */
public interface Organisations {

    /** A new, empty organisation. */
    UUID open(String name);

    /** The same inside the caller's scope and transaction: the organisation of that scope, to stand or fall with the rest. */
    void openHere(String name);
}
