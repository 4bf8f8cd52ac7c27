@NullMarked
package org.scrubline.notice;

import org.jspecify.annotations.NullMarked;
