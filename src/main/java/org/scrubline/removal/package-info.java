/**
 * The end of signed records: when their term is over, two people remove them, and a tombstone stays. Nothing is ever
 * removed by itself.
 */
@ApplicationModule(
        displayName = "Removal",
        allowedDependencies = {"retention", "people", "ledger", "platform"})
@NullMarked
package org.scrubline.removal;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
