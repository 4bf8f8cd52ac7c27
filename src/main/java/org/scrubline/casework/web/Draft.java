package org.scrubline.casework.web;

import java.util.UUID;
import org.scrubline.casework.Part;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.rubric.EventCatalogue;
import org.scrubline.rubric.Rubric;

/**
 * A supervisor's open sheet with everything a page needs to read it.
 *
 * @param traineeName initial and surname, or a label that holds no name
 */
record Draft(
        Sheet sheet,
        SurgicalCase surgicalCase,
        String traineeName,
        Part claimedPart,
        Rubric rubric,
        EventCatalogue catalogue) {

    /** The same case with the sheet after a change. */
    Draft with(Sheet changed) {
        return new Draft(changed, surgicalCase, traineeName, claimedPart, rubric, catalogue);
    }

    SheetInput stored() {
        return SheetInput.of(rubric, sheet);
    }

    /** {@code eventId} is what an event among what was sent will be known by. */
    SheetReading read(SheetInput sent, UUID eventId) {
        return new SheetReading(
                sent, stored(), new SheetReading.Logged(claimedPart, surgicalCase.plannedSupervision()), eventId);
    }

    /** The same with a label in place of the name, for what is kept on a device. */
    Draft called(String label) {
        return new Draft(sheet, surgicalCase, label, claimedPart, rubric, catalogue);
    }
}
