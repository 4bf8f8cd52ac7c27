package org.scrubline.platform.database;

/** The server cannot start on this database; the message is the sentence for the operator. */
public class DatabaseUnusable extends RuntimeException {

    public DatabaseUnusable(String sentence) {
        super(sentence);
    }
}
