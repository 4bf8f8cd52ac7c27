/** Tests of signing and of what was signed. */
@NullMarked
package org.scrubline.signoff;

import org.jspecify.annotations.NullMarked;
