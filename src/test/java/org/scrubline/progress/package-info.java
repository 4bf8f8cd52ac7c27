/** Tests of what signed sheets say about one trainee. */
@NullMarked
package org.scrubline.progress;

import org.jspecify.annotations.NullMarked;
