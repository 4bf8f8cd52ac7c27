/** Variance components of unbalanced, crossed designs by restricted maximum likelihood. */
@NullMarked
package org.scrubline.scoring.mixed;

import org.jspecify.annotations.NullMarked;
