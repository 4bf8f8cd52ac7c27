/** Tests of the product's look: every component by its named examples, its colours, its words. */
@NullMarked
package org.scrubline.look;

import org.jspecify.annotations.NullMarked;
