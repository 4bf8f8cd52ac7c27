package org.scrubline.ledger;

/**
 * A record with its place in the ledger.
 *
 * @param index of its leaf, from 0
 * @param checkpoint the newest that covers it
 * @param verifierKey of the key that signed the checkpoint, as recorded in the ledger
 * @param json the receipt file (docs/evidence-format.md)
 */
public record Receipt(long index, IssuedCheckpoint checkpoint, String verifierKey, String json) {}
