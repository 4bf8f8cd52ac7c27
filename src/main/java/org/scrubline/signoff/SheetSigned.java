package org.scrubline.signoff;

import java.util.UUID;
import org.scrubline.platform.Audited;

/**
 * A sheet was signed.
 *
 * @param about the trainee
 * @param after hash of what was signed
 */
record SheetSigned(UUID actor, UUID about, UUID programme, Item item, String after) implements Audited {

    static SheetSigned of(SignedSheet signed, String reference) {
        return new SheetSigned(
                signed.signerId(),
                signed.traineeId(),
                signed.programmeId(),
                new Item("signed-sheet", signed.id(), signed.versionNo(), reference),
                "sha256:" + signed.contentHash());
    }

    @Override
    public String action() {
        return "sheet-signed";
    }
}
