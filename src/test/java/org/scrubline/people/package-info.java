/** Tests of the people room. */
@NullMarked
package org.scrubline.people;

import org.jspecify.annotations.NullMarked;
