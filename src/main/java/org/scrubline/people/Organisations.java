package org.scrubline.people;

import java.util.UUID;

/** Opens organisations. The only service that works before a tenant scope exists. */
public interface Organisations {

    /** A new, empty organisation. */
    UUID open(String name);
}
