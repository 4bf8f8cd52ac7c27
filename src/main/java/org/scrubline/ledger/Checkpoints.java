package org.scrubline.ledger;

import java.util.Optional;

/** Signed checkpoints of the ledger of the organisation in scope. */
public interface Checkpoints {

    /**
     * Publishes a checkpoint of everything so far, unless the newest one covers all but its own leaf and the key is the
     * same.
     *
     * @return the newest checkpoint then; empty while the ledger is
     */
    Optional<IssuedCheckpoint> publish();

    Optional<IssuedCheckpoint> newest();

    /** The key that signs now, in the text form offices keep ({@code name+id+base64}). */
    String verifierKey();

    /** Leaves of the ledger. */
    long size();
}
