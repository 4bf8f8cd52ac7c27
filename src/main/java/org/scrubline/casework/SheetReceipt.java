package org.scrubline.casework;

import java.util.List;
import java.util.UUID;

/**
 * What the server holds of a sheet and of the taps that made it, read anew.
 *
 * @param taps ids of every tap applied, oldest first
 */
public record SheetReceipt(Sheet sheet, List<UUID> taps) {
    public SheetReceipt {
        taps = List.copyOf(taps);
    }
}
