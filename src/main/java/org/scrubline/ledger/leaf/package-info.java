/** What a leaf says: the entry that is hashed, and the rows it fixes. */
@NullMarked
package org.scrubline.ledger.leaf;

import org.jspecify.annotations.NullMarked;
