package org.scrubline.platform.security;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.passkey.PasskeyAnswers;
import org.springframework.security.authentication.AuthenticationProvider;
import org.springframework.security.authentication.BadCredentialsException;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.authority.FactorGrantedAuthority;

/** Turns a right answer of a passkey into the same principal a password leads to. */
class PasskeyProvider implements AuthenticationProvider {

    private final PasskeyAnswers answers;
    private final AccountStore accounts;
    private final LoginThrottle throttle;

    PasskeyProvider(PasskeyAnswers answers, AccountStore accounts, LoginThrottle throttle) {
        this.answers = answers;
        this.accounts = accounts;
        this.throttle = throttle;
    }

    /** Wrong passwords typed by a stranger do not keep the owner's passkey out: a signature cannot be guessed. */
    @Override
    public Authentication authenticate(Authentication attempt) {
        PasskeyLogIn logIn = (PasskeyLogIn) attempt;
        AccountPrincipal account = answers.check(logIn.getCredentials(), logIn.challenge())
                .<Optional<UUID>>fold(who -> Optional.of(who.accountId()), reasons -> Optional.empty())
                .flatMap(this::open)
                .orElseThrow(() -> refused(logIn));
        UsernamePasswordAuthenticationToken entered = UsernamePasswordAuthenticationToken.authenticated(
                account,
                null,
                List.of(FactorGrantedAuthority.fromAuthority(FactorGrantedAuthority.WEBAUTHN_AUTHORITY)));
        entered.setDetails(attempt.getDetails());
        return entered;
    }

    private Optional<AccountPrincipal> open(UUID accountId) {
        return accounts.byId(accountId)
                .flatMap(account -> accounts.byUsername(account.username()))
                .filter(AccountPrincipal::isEnabled);
    }

    /** Counted for the account it claimed to be; the address is counted from the event. */
    private BadCredentialsException refused(PasskeyLogIn logIn) {
        answers.claimed(logIn.getCredentials())
                .flatMap(accounts::byId)
                .ifPresent(account -> throttle.failed(LoginThrottle.account(account.username())));
        return new BadCredentialsException("passkey refused");
    }

    @Override
    public boolean supports(Class<?> authentication) {
        return PasskeyLogIn.class.isAssignableFrom(authentication);
    }
}
