package org.scrubline.platform;

/** The sessions an account is logged in with. */
public interface OpenLogIns {

    /** Ends all of them, on every server. */
    void endAll(String username);
}
