package org.scrubline.ledger;

import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.Assertion;
import org.scrubline.platform.Recognised;

/** Keeps the passkey signatures under the records of the organisation in scope. */
public interface Assertions {

    /**
     * Keeps the assertion a record was signed with and fixes it in the ledger; a password leaves nothing to keep. Call it
     * in the transaction that adds the record, once the record has its leaf.
     *
     * @param kind of the record
     * @throws IllegalStateException outside a transaction
     * @throws org.springframework.dao.DuplicateKeyException when the record has one already
     */
    void keep(LeafKind kind, UUID record, Recognised how);

    /** What is kept of the signature under a record; empty when it was signed with a password. */
    Optional<Assertion> of(LeafKind kind, UUID record);
}
