/**
 * Rubrics as data: procedures, their steps in phases, the five level sentences of each step, measures, hazards and
 * coaching, the events and the complexity factors. The shipped library is read from files; a programme publishes
 * versions of it, and a published version never changes. {@code change} is how a new version comes about, {@code survey}
 * how experts say whether its steps are the right ones.
 */
@ApplicationModule(
        displayName = "Rubrics",
        allowedDependencies = {"ledger", "people", "platform"})
@NullMarked
package org.scrubline.rubric;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
