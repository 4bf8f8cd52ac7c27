/** Jobs on a real scheduler and database. */
@NullMarked
package org.scrubline.platform.jobs;

import org.jspecify.annotations.NullMarked;
