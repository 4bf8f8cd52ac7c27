/**
 * The verifier. Its core reads leaves with the rows they fix, in order, from wherever they come: the database, an evidence
 * file, a receipt. It holds no more than a few hashes at a time.
 */
@NamedInterface("check")
@NullMarked
package org.scrubline.ledger.check;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.NamedInterface;
