/**
 * Who did what and who looked at whose record: entries nobody can change, written with the deed itself. Knows only
 * {@code Audited}; every room publishes its own events.
 */
@ApplicationModule(
        displayName = "Audit",
        allowedDependencies = {"people", "ledger", "platform", "platform :: jobs"})
@NullMarked
package org.scrubline.audit;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
