package org.scrubline.platform.security;

import java.util.Collection;
import java.util.Optional;
import org.scrubline.platform.Refusal;
import org.springframework.stereotype.Component;

/**
 * What a password must be: long, and not what somebody who knows people or lists tries first (NIST SP 800-63B, section
 * 5.1.1.2, from memory). No rules of composition, long ones are welcome, every code point counts one.
 */
@Component
class PasswordRule {

    static final int SHORTEST = 12;
    static final int LONGEST = 200;

    private final RefusedPasswords refused;

    PasswordRule(RefusedPasswords refused) {
        this.refused = refused;
    }

    /**
     * Why it cannot be taken, if so.
     *
     * @param names of the account and its owner, as far as they are known here
     */
    Optional<Refusal> check(String password, Collection<String> names) {
        int length = password.codePointCount(0, password.length());
        if (length < SHORTEST || length > LONGEST) {
            return Optional.of(Refusal.at("password", "refusal.password.length", SHORTEST, LONGEST));
        }
        if (PasswordPattern.found(password)) {
            return Optional.of(Refusal.at("password", "refusal.password.pattern"));
        }
        if (PasswordPattern.madeOf(password, names)) {
            return Optional.of(Refusal.at("password", "refusal.password.names"));
        }
        return refused.contains(password)
                ? Optional.of(Refusal.at("password", "refusal.password.known"))
                : Optional.empty();
    }
}
