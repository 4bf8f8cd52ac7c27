@NullMarked
package org.scrubline.casework;

import org.jspecify.annotations.NullMarked;
