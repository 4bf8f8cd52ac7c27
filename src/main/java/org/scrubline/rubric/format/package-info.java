/** The file format of rubrics and code lists (docs/rubric-format.md) and its strict reader. */
@NullMarked
package org.scrubline.rubric.format;

import org.jspecify.annotations.NullMarked;
