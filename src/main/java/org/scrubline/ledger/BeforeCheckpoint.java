package org.scrubline.ledger;

/** What a room does right before a checkpoint of the organisation in scope, so that the checkpoint covers it. */
public interface BeforeCheckpoint {

    /** Outside any transaction. */
    void prepare();
}
