package org.scrubline.platform.factor;

import java.time.Instant;
import org.bouncycastle.util.encoders.Base32;

/** An authenticator app: makes codes of the secret a page showed. */
public final class AuthenticatorApp {

    private final byte[] secret;

    /** @param shown the secret as the page writes it, base32 in groups */
    public AuthenticatorApp(String shown) {
        this.secret = Base32.decode(shown.replace(" ", ""));
    }

    public String code(Instant at) {
        return TimeCode.of(secret, TimeCode.step(at), TimeCode.DIGITS);
    }
}
