package org.scrubline.ledger;

/**
 * Where a leaf stands.
 *
 * @param index its place in the organisation's ledger, 0 for the first
 * @param entry the canonical JSON that was hashed
 */
public record LeafReceipt(long index, String entry) {}
