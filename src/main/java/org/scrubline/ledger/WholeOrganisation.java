package org.scrubline.ledger;

import org.scrubline.platform.SignedIn;

/** Who may take everything of the organisation along; answered by the room that knows its programmes. */
public interface WholeOrganisation {

    /** Whether this person directs every programme there is. */
    boolean directedBy(SignedIn who);
}
