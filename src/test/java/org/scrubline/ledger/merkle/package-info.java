/** Tests of hashes, roots and proofs against published values. */
@NullMarked
package org.scrubline.ledger.merkle;

import org.jspecify.annotations.NullMarked;
