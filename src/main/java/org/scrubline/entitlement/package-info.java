/**
 * What a trainee may do: a supervision level for each family of procedures and complexity band, its history, and whether
 * it is suspended. The committee writes it; everyone who plans or enters a case reads it. It never changes by itself.
 */
@ApplicationModule(
        displayName = "Entitlement",
        allowedDependencies = {"rubric", "people", "ledger", "platform"})
@NullMarked
package org.scrubline.entitlement;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
