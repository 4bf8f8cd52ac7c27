package org.scrubline.platform;

import java.util.UUID;

/** Takes a second factor away whose owner lost it. Who may decide that, and with whom, is decided elsewhere. */
public interface FactorReset {

    /** Whether the account has one: an authenticator app or a passkey. */
    boolean any(UUID account);

    /** Takes app, recovery codes and passkeys away and ends every session. Signatures made before can be verified as before. */
    void clear(UUID account, String username);
}
