/** Experts say whether the steps of a rubric are the right ones: content validity, counted; people decide. */
@NullMarked
package org.scrubline.rubric.survey;

import org.jspecify.annotations.NullMarked;
