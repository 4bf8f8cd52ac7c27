/** How a version of a rubric comes about: the draft, what it changes, what a second person says, and its first day. */
@NamedInterface("change")
@NullMarked
package org.scrubline.rubric.change;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.NamedInterface;
