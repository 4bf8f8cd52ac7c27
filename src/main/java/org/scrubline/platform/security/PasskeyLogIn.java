package org.scrubline.platform.security;

import java.util.List;
import org.springframework.security.authentication.AbstractAuthenticationToken;

/** An answer of a passkey that nobody has looked at. Its name stays empty: who it is, is the question. */
class PasskeyLogIn extends AbstractAuthenticationToken {

    private final String json;
    private final byte[] challenge;

    PasskeyLogIn(String json, byte[] challenge) {
        super(List.of());
        this.json = json;
        this.challenge = challenge.clone();
    }

    byte[] challenge() {
        return challenge.clone();
    }

    @Override
    public Object getPrincipal() {
        return "";
    }

    @Override
    public String getCredentials() {
        return json;
    }
}
