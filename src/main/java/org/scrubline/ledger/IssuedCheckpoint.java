package org.scrubline.ledger;

import java.time.Instant;

/**
 * A published checkpoint.
 *
 * @param size leaves it covers
 * @param note the signed note, word for word
 */
public record IssuedCheckpoint(long size, Instant issuedAt, String note) {}
