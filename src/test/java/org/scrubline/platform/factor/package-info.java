@NullMarked
package org.scrubline.platform.factor;

import org.jspecify.annotations.NullMarked;
