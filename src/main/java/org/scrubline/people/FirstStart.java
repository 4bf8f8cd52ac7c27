package org.scrubline.people;

import java.util.UUID;
import org.scrubline.platform.Attempt;

/** The first start of an empty server: a token on the console lets one person open the first organisation. */
public interface FirstStart {

    /** Whether the server still waits for its first administrator. */
    boolean waiting();

    /**
     * Makes a new token and forgets the one before.
     *
     * @return the token, to be printed once
     */
    String newToken();

    /**
     * Opens the organisation with a programme, a site and its first administrator, and uses up the token.
     *
     * @return the organisation, or every reason why not; nothing is stored then
     */
    Attempt<UUID> complete(FirstStartEntry entry);
}
