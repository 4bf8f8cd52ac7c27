/** Tests of the verifier. */
@NullMarked
package org.scrubline.ledger.check;

import org.jspecify.annotations.NullMarked;
