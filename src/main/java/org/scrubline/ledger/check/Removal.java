package org.scrubline.ledger.check;

/**
 * Records that were removed after their term.
 *
 * @param at instant of the removal, as the ledger keeps it
 * @param askedBy name of the one who asked
 * @param removedBy name of the one who confirmed
 * @param records signed versions that went
 */
public record Removal(String at, String askedBy, String removedBy, long records) {}
