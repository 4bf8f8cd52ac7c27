package org.scrubline.entitlement;

/** Writes what trainees may do. Only the committee's room calls it (held by a test of the architecture). */
public interface EntitlementBook {

    /**
     * Adds a change and fixes it in the ledger, in the caller's transaction.
     *
     * @throws IllegalStateException outside a transaction
     */
    void record(EntitlementChange change);
}
