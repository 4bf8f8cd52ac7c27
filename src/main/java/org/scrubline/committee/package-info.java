/**
 * The committee: its meetings, the evidence frozen for them, its decisions about what a trainee may do, the letters about
 * these, and appeals. It proposes nothing by itself beyond three phrases; people decide, and a chair signs.
 */
@ApplicationModule(
        displayName = "Committee",
        allowedDependencies = {
            "progress",
            "scoring",
            "signoff",
            "casework",
            "outcome",
            "entitlement",
            "training",
            "rubric",
            "people",
            "ledger",
            "platform"
        })
@NullMarked
package org.scrubline.committee;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
