package org.scrubline.casework.web;

import org.scrubline.casework.Part;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.rubric.EventCatalogue;
import org.scrubline.rubric.Rubric;

/** A supervisor's open sheet with everything a page needs to read it. */
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

    SheetReading read(SheetInput sent) {
        return new SheetReading(
                sent, stored(), new SheetReading.Logged(claimedPart, surgicalCase.plannedSupervision()));
    }
}
