/**
 * The director's view of a programme: every trainee's counts side by side, what is worth a look and why, and whether
 * sheets are signed in time. Counts signed sheets; ranks nobody.
 */
@ApplicationModule(
        displayName = "Cohort",
        allowedDependencies = {
            "progress",
            "scoring",
            "rubric",
            "people",
            "platform",
            "casework",
            "casework :: reference",
            "signoff"
        })
@NullMarked
package org.scrubline.cohort;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
