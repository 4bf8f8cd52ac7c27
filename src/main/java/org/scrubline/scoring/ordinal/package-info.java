/** Models of ordered categories: cumulative logits with and without a random effect, and the many-facet Rasch model. */
@NullMarked
package org.scrubline.scoring.ordinal;

import org.jspecify.annotations.NullMarked;
