/** Experts say whether the steps of a rubric are the right ones: content validity, counted; people decide. */
@NamedInterface("survey")
@NullMarked
package org.scrubline.rubric.survey;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.NamedInterface;
