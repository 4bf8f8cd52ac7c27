package org.scrubline.signoff;

import java.util.UUID;
import org.scrubline.platform.SignedIn;

/** The statement of what a signature here means, accepted once by everyone before the first one. */
public interface SigningStatements {

    /** Raised whenever the words change, which asks everyone again. */
    int VERSION = 1;

    /** Whether this person accepted the statement in its present version. */
    boolean accepted(UUID personId);

    /** The statement, in the language records are kept in. */
    String text();

    /** Keeps that this person accepted it; accepting again changes nothing. */
    void accept(SignedIn who);
}
