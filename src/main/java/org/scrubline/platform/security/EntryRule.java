package org.scrubline.platform.security;

import java.util.Collection;
import java.util.Set;
import org.scrubline.platform.Passkeys;
import org.scrubline.platform.SecondFactorRule;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.factor.SecondFactors;
import org.springframework.security.core.GrantedAuthority;
import org.springframework.security.core.authority.FactorGrantedAuthority;
import org.springframework.stereotype.Component;

/** Whether what somebody showed is enough to come in. A passkey counts as two factors: the device and its check. */
@Component
class EntryRule {

    /** A right code of an app, or a recovery code, beside the password. */
    static final String CODE = "FACTOR_CODE";

    /** The word of an organisation's provider that it saw two factors, where the connection's settings count it. */
    static final String PROVIDER = "FACTOR_PROVIDER_TWO";

    private static final Set<String> COMPLETE = Set.of(CODE, PROVIDER, FactorGrantedAuthority.WEBAUTHN_AUTHORITY);

    private final SecondFactors factors;
    private final Passkeys passkeys;
    private final SecondFactorRule rule;

    EntryRule(SecondFactors factors, Passkeys passkeys, SecondFactorRule rule) {
        this.factors = factors;
        this.passkeys = passkeys;
        this.rule = rule;
    }

    /** Where somebody stands. */
    enum Standing {
        IN,
        /** Has a second factor and did not show it. */
        SHOW,
        /** Must have one and has none. */
        SET_UP
    }

    /** Whether an app of the account still has to be shown, whatever organisation is entered. */
    boolean appMissing(SignedIn who, Collection<? extends GrantedAuthority> shown) {
        return factors.app(who.accountId()).isPresent() && of(who, shown) == Standing.SHOW;
    }

    /** Asked anew for every request, so that a rule or a factor added a moment ago holds for sessions there are. */
    Standing of(SignedIn who, Collection<? extends GrantedAuthority> shown) {
        if (shown.stream().map(GrantedAuthority::getAuthority).anyMatch(COMPLETE::contains)) {
            return Standing.IN;
        }
        if (factors.app(who.accountId()).isPresent()) {
            return Standing.SHOW;
        }
        if (!rule.required(who)) {
            return Standing.IN;
        }
        // A stolen password must not be enough to add a factor beside the one there is.
        return passkeys.of(who.accountId()).isEmpty() ? Standing.SET_UP : Standing.SHOW;
    }
}
