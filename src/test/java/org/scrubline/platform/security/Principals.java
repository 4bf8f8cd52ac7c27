package org.scrubline.platform.security;

import org.scrubline.platform.SignedIn;

/** Lets tests of other rooms make the principal a session would hold. */
public final class Principals {

    private Principals() {}

    public static Object of(SignedIn who) {
        return new AccountPrincipal(who.accountId(), who.tenantId(), who.username(), null, true);
    }
}
