/**
 * What signed sheets say about one trainee: counts by step, the chart of cases with a critical event, the competency
 * curve, what is too little to conclude from, and what to practise next. Reads signed sheets only; keeps the population
 * fits the curves rest on.
 */
@ApplicationModule(
        displayName = "Progress",
        allowedDependencies = {
            "scoring",
            "signoff",
            "casework",
            "entitlement",
            "rubric",
            "people",
            "ledger",
            "platform",
            "platform :: jobs"
        })
@NullMarked
package org.scrubline.progress;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
