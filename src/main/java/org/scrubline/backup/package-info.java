/**
 * The only copy an installation has beside itself: writes all organisations' records to one file while the server goes
 * on working, and restores such a file into an empty installation. Knows tables from the database's own catalogue and
 * nothing of what they mean.
 */
@ApplicationModule(
        displayName = "Backup and restore",
        allowedDependencies = {"platform", "platform :: database", "platform :: jobs"})
@NullMarked
package org.scrubline.backup;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
