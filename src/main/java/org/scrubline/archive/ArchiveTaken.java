package org.scrubline.archive;

import java.util.UUID;
import org.scrubline.platform.Audited;
import org.scrubline.platform.SignedIn;

/** Somebody took away what is kept about them. */
record ArchiveTaken(UUID actor, Item item) implements Audited {

    static ArchiveTaken by(SignedIn who) {
        return new ArchiveTaken(who.personId(), new Item("archive", who.personId(), null, who.printedName()));
    }

    @Override
    public String action() {
        return "archive-taken";
    }
}
