package org.scrubline.ledger;

import java.util.Optional;
import java.util.UUID;

/** Adds evidence to the ledger of the organisation in scope. */
public interface Ledger {

    /**
     * Fixes the rows of a record as they stand in the running transaction. Call it last: from here to the end of the
     * transaction no other leaf of the organisation is appended, so the order of leaves is the order of commits.
     *
     * @throws IllegalStateException outside a transaction, or when the record has no row
     * @throws org.springframework.dao.DuplicateKeyException when the record has a leaf of this kind
     */
    LeafReceipt append(LeafKind kind, UUID record);

    /** Where a record stands in the ledger; empty when it has no leaf of this kind. */
    Optional<LeafReceipt> find(LeafKind kind, UUID record);
}
