package org.scrubline.platform;

import java.util.UUID;

/** Mail about getting into an account. It goes out in the background, from the room that knows the mail server. */
public interface AccountMail {

    /** Whether the installation names a mail server at all. */
    boolean isSet();

    /**
     * Asks for a code for whoever this belongs to, if anybody. Does the same work either way, so that the time it takes does
     * not tell.
     *
     * @param typed a log-in name or an address; only its hash is kept
     */
    void forgotten(String typed);

    /** Sends a code to the address that waits to be confirmed, and tells the one that serves so far. Within a tenant scope. */
    void confirm(UUID account);

    /** Tells the owner that a new password was chosen with a code. Within a tenant scope. */
    void renewed(UUID account);
}
