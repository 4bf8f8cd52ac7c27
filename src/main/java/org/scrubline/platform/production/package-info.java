/** What the production profile asks of its settings before it starts. */
@NullMarked
package org.scrubline.platform.production;

import org.jspecify.annotations.NullMarked;
