@NullMarked
package org.scrubline.platform.production;

import org.jspecify.annotations.NullMarked;
