/**
 * What became of the eye: pressure before the operation, visits after it, what is due and what never came, and success by
 * printed definitions. It belongs to a team and to the disease; linked to training only where there are enough cases.
 */
@ApplicationModule(
        displayName = "Outcome",
        allowedDependencies = {"scoring", "casework", "rubric", "people", "platform"})
@NullMarked
package org.scrubline.outcome;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
