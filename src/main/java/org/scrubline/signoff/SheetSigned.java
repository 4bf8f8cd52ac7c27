package org.scrubline.signoff;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Audited;
import org.scrubline.signoff.SignedContent.DeviceTime;

/**
 * A sheet was signed.
 *
 * @param about the trainee
 * @param after hash of what was signed
 * @param deviceTime clock of the device, for a signature made without a network
 */
record SheetSigned(
        UUID actor,
        UUID about,
        UUID programme,
        Item item,
        String after,
        @Nullable Instant deviceTime) implements Audited {

    static SheetSigned of(SignedSheet signed, String reference, @Nullable DeviceTime device) {
        return new SheetSigned(
                signed.signerId(),
                signed.traineeId(),
                signed.programmeId(),
                new Item("signed-sheet", signed.id(), signed.versionNo(), reference),
                "sha256:" + signed.contentHash(),
                device == null ? null : device.at());
    }

    @Override
    public String action() {
        return "sheet-signed";
    }
}
