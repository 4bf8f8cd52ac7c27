package org.scrubline.signoff;

import java.util.List;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.Versions.Signature;

/**
 * Takes records out of all numbers, by two people. Everything here answers {@code NotFound} for a record this person may
 * not read, and for anyone but its newest signer and the directors of the programme; never for its trainee.
 */
public interface Voids {

    /** Asks for a record to be void, by the id of any of its versions. Sent again, the same request is answered. */
    Attempt<Statement> ask(SignedIn who, UUID recordId, VoidGround ground, Signature signature);

    /**
     * Confirms or declines what somebody else asked. The record is void from then on, or as before. Sent again, the first
     * decision is answered when it was the same.
     *
     * @param signature a confirmation needs no text
     */
    Attempt<Statement> decide(SignedIn who, UUID recordId, boolean confirm, Signature signature);

    /** Requests that wait for this person. */
    List<SignedLine> waiting(SignedIn who);
}
