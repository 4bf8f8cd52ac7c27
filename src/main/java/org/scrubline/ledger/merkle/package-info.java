/** Hashes, roots and proofs of a Merkle tree after RFC 9162 section 2.1; knows nothing of what the leaves mean. */
@NullMarked
package org.scrubline.ledger.merkle;

import org.jspecify.annotations.NullMarked;
