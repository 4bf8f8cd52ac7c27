/**
 * What every room stands on: the clock, the tenant scope, refusals, the embedded database, the security filter chain
 * and the shell of a page. Knows nothing of surgery.
 */
@ApplicationModule(
        displayName = "Platform",
        allowedDependencies = {})
@NullMarked
package org.scrubline.platform;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
