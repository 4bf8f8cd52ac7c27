/**
 * The statistics of the product in pure Java: no framework, no database, no clock. {@code curve} is the competency
 * model, {@code control} the control charts, {@code reliability} agreement and generalizability, {@code estimate}
 * intervals and standard setting. May use nothing but the JDK and the numerics libraries of the build file.
 */
@ApplicationModule(
        displayName = "Scoring",
        type = ApplicationModule.Type.OPEN,
        allowedDependencies = {})
@NullMarked
package org.scrubline.scoring;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
