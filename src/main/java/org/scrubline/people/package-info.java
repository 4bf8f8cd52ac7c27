/**
 * Organisations, programmes, sites, persons, their roles and declared conflicts: who is who, and where.
 */
@ApplicationModule(
        displayName = "People",
        allowedDependencies = {"ledger", "platform"})
@NullMarked
package org.scrubline.people;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
