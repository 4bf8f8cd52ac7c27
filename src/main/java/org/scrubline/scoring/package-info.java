/**
 * The statistics of the product in pure Java: no framework, no database, no clock. {@code curve} is the competency
 * model, {@code control} the control charts, {@code reliability} agreement and generalizability, {@code mixed} variance
 * components of unbalanced designs, {@code ordinal} models of ordered categories, {@code estimate} intervals and
 * standard setting. May use nothing but the JDK and the numerics libraries of the build file.
 *
 * <p>Unless a method says otherwise: arguments are not changed; bad input is an {@link IllegalArgumentException} with a
 * sentence for the user; what does not exist for good input (no variance to divide) is an empty optional; tables are
 * rows of equal length, without gaps, of finite numbers.
 */
@ApplicationModule(
        displayName = "Scoring",
        type = ApplicationModule.Type.OPEN,
        allowedDependencies = {})
@NullMarked
package org.scrubline.scoring;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
