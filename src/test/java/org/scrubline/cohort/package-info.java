/** Tests of the director's view. */
@NullMarked
package org.scrubline.cohort;

import org.jspecify.annotations.NullMarked;
