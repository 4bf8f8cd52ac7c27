package org.scrubline.signoff;

import java.util.UUID;
import org.scrubline.platform.Audited;
import org.scrubline.platform.SignedIn;

/** Somebody tried to sign about a version what is not theirs to sign. */
record SignatureRefused(SignedIn who, RecordEvent event, SignedSheet version) implements Audited {

    @Override
    public String action() {
        return "signature-refused";
    }

    @Override
    public Item item() {
        return new Item("signed-sheet", version.id(), version.versionNo(), "");
    }

    @Override
    public UUID actor() {
        return who.personId();
    }

    @Override
    public UUID about() {
        return version.traineeId();
    }

    @Override
    public UUID programme() {
        return version.programmeId();
    }

    @Override
    public String after() {
        return event.name();
    }
}
