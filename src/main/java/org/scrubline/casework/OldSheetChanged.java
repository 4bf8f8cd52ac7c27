package org.scrubline.casework;

import java.util.UUID;
import org.scrubline.people.Programme;
import org.scrubline.platform.Audited;

/**
 * The server announced the removal of an open sheet, or removed it.
 *
 * @param after the day announced, or how many days nothing had changed
 */
record OldSheetChanged(String action, UUID about, UUID programme, Item item, String after) implements Audited {

    static OldSheetChanged of(String action, OldSheet sheet, Programme programme, String value) {
        return new OldSheetChanged(
                action,
                sheet.traineeId(),
                programme.id(),
                new Item("open-sheet", sheet.id(), null, sheet.reference()),
                value);
    }
}
