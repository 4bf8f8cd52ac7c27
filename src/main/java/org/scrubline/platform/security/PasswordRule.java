package org.scrubline.platform.security;

import java.util.Optional;
import org.scrubline.platform.Refusal;

/** Length only, as NIST SP 800-63B asks: no composition rules, long ones welcome, every code point counts one. */
final class PasswordRule {

    static final int SHORTEST = 12;
    static final int LONGEST = 200;

    private PasswordRule() {}

    static Optional<Refusal> check(String password) {
        int length = password.codePointCount(0, password.length());
        if (length < SHORTEST || length > LONGEST) {
            return Optional.of(Refusal.at("password", "refusal.password.length", SHORTEST, LONGEST));
        }
        return Optional.empty();
    }
}
