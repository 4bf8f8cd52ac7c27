/** Tests of what a leaf fixes. */
@NullMarked
package org.scrubline.ledger.leaf;

import org.jspecify.annotations.NullMarked;
