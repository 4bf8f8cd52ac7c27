/**
 * Signed notes and checkpoints in the text forms of C2SP signed-note v1.0.0 and tlog-checkpoint v1.0.0, and the Ed25519
 * keys (RFC 8032) behind them.
 */
@NamedInterface("note")
@NullMarked
package org.scrubline.ledger.note;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.NamedInterface;
