package org.scrubline.casework;

import java.util.List;
import java.util.UUID;

/**
 * A case in a trainee's own list.
 *
 * @param sheets one entry a supervisor asked to score it
 */
public record TraineeCase(SurgicalCase surgicalCase, Part claimedPart, List<SheetLine> sheets) {

    /** One sheet: who scores, how far it is. */
    public record SheetLine(UUID sheetId, String scorerName, SheetState state) {}

    public TraineeCase {
        sheets = List.copyOf(sheets);
    }

    /** Whether it was scored and every sheet about this trainee is void. */
    public boolean isVoid() {
        return !sheets.isEmpty() && sheets.stream().allMatch(sheet -> sheet.state() == SheetState.VOID);
    }
}
