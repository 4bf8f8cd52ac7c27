/** Everything kept about one person, as a file this person takes away. Reads the tables of every room and writes none. */
@ApplicationModule(
        displayName = "Archive",
        allowedDependencies = {"platform"})
@NullMarked
package org.scrubline.archive;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
