/** What is written down, and that nothing happens without it. */
@NullMarked
package org.scrubline.audit;

import org.jspecify.annotations.NullMarked;
