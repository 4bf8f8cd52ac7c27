package org.scrubline.signoff;

import org.scrubline.casework.Sheet;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.rubric.PublishedRubric;

/** A sheet with all that a signature on it would cover, as it stands now. */
record Review(Sheet sheet, SurgicalCase operation, PublishedRubric published, SheetContent content) {}
