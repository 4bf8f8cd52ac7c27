package org.scrubline.signoff;

import java.util.function.Supplier;
import org.scrubline.platform.Accounts;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

/**
 * Recognises who signs before any transaction begins: a slow password hash must not hold a connection. A
 * shared log-in or a closed account signs nothing.
 */
@Component
class FreshPassword {

    private final Accounts accounts;
    private final SigningAuthority authority;

    FreshPassword(Accounts accounts, SigningAuthority authority) {
        this.accounts = accounts;
        this.authority = authority;
    }

    <T> Attempt<T> confirm(SignedIn who, String password, Supplier<Attempt<T>> signing) {
        return authority
                .standing(who.personId())
                .map(Attempt::<T>refused)
                .orElseGet(() -> accounts.confirmPassword(who.accountId(), password)
                        .fold(account -> signing.get(), Attempt::refused));
    }
}
