/** The pages of the rubric room. */
@NullMarked
package org.scrubline.rubric.web;

import org.jspecify.annotations.NullMarked;
