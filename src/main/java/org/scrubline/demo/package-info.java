/**
 * The invented programme: people, cases and scores that never existed, written through the product's own services so
 * that every record is signed like a real one. Exists in the demo profile alone; the
 * production profile only looks that none of its accounts is there.
 */
@ApplicationModule(
        displayName = "Demo",
        allowedDependencies = {
            "committee",
            "entitlement",
            "training",
            "signoff",
            "outcome",
            "casework",
            "casework :: reference",
            "rubric",
            "rubric :: change",
            "rubric :: survey",
            "people",
            "scoring",
            "platform"
        })
@NullMarked
package org.scrubline.demo;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
