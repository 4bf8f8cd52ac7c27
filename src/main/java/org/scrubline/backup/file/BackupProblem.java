package org.scrubline.backup.file;

/** A backup cannot be taken, read or restored; the message is the sentence for the operator. */
public final class BackupProblem extends RuntimeException {

    public BackupProblem(String sentence) {
        super(sentence);
    }

    public BackupProblem(String sentence, Throwable cause) {
        super(sentence, cause);
    }

    /** Bytes that are not as they were written. */
    static BackupProblem damaged(String what) {
        return new BackupProblem("The backup is damaged or incomplete: " + what + " Nothing was restored from it.");
    }
}
