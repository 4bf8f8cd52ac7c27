package org.scrubline.signoff;

import java.util.UUID;
import org.scrubline.platform.Audited;

/**
 * A trainee wrote a remark under a signed sheet.
 *
 * @param after hash of the text
 */
record RemarkWritten(UUID actor, UUID programme, Item item, String after) implements Audited {

    static RemarkWritten of(SignedSheet signed, Remark remark) {
        return new RemarkWritten(
                signed.traineeId(),
                signed.programmeId(),
                new Item("remark", remark.id(), null, ""),
                Audited.hash(remark.body()));
    }

    @Override
    public String action() {
        return "remark-written";
    }

    @Override
    public UUID about() {
        return actor;
    }
}
