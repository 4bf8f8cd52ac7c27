/** Times and holds. */
@NullMarked
package org.scrubline.retention;

import org.jspecify.annotations.NullMarked;
