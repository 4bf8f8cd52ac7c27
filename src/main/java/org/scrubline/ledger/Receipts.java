package org.scrubline.ledger;

import java.util.UUID;

/** Receipts for records of the organisation in scope. The caller knows who may have one. */
public interface Receipts {

    /**
     * The receipt of a record. When no checkpoint covers it yet, one is published.
     *
     * @throws org.scrubline.platform.NotFound when the record has no leaf of this kind
     */
    Receipt of(LeafKind kind, UUID record);
}
