package org.scrubline.signoff;

import java.util.function.Supplier;
import org.scrubline.platform.Accounts;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

/** Recognises who signs before any transaction begins: a slow password hash must not hold a connection. */
@Component
class FreshPassword {

    private final Accounts accounts;

    FreshPassword(Accounts accounts) {
        this.accounts = accounts;
    }

    <T> Attempt<T> confirm(SignedIn who, String password, Supplier<Attempt<T>> signing) {
        return accounts.confirmPassword(who.accountId(), password).fold(account -> signing.get(), Attempt::refused);
    }
}
