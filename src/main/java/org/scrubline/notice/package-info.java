/**
 * The one quiet path that reminds supervisors of scores that have not come: on a page, and by one mail a day for those
 * who want it.
 */
@ApplicationModule(
        displayName = "Notice",
        allowedDependencies = {"casework", "rubric", "people", "platform", "platform :: jobs"})
@NullMarked
package org.scrubline.notice;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
