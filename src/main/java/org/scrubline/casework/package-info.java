/**
 * A case, its complexity and the score sheets about it while they are drafts; the trainee's own scores and remarks.
 */
@ApplicationModule(
        displayName = "Casework",
        allowedDependencies = {"entitlement", "rubric", "retention", "people", "ledger", "platform", "platform :: jobs"
        })
@NullMarked
package org.scrubline.casework;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
