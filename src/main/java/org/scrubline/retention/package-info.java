/**
 * How long records are kept in a programme, and the holds under which nothing is removed. The rooms that keep the records
 * do the removing; they ask here first.
 */
@ApplicationModule(
        displayName = "Retention",
        allowedDependencies = {"people", "ledger", "platform"})
@NullMarked
package org.scrubline.retention;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
