/** Tests of signing and of what was signed. */
@NullMarked
package org.scrubline.ledger;

import org.jspecify.annotations.NullMarked;
