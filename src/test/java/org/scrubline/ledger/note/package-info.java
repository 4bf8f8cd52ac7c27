/** Tests of keys, notes and checkpoints against published values. */
@NullMarked
package org.scrubline.ledger.note;

import org.jspecify.annotations.NullMarked;
