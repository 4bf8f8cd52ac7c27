package org.scrubline.platform.security;

import java.util.UUID;
import org.scrubline.platform.Passkeys;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** How an account can be entered besides the log-in of its organisation. */
@Service
@Transactional(readOnly = true)
public class OtherWaysIn {

    private final AccountStore accounts;
    private final Passkeys passkeys;

    OtherWaysIn(AccountStore accounts, Passkeys passkeys) {
        this.accounts = accounts;
        this.passkeys = passkeys;
    }

    public boolean password(UUID account) {
        return accounts.byId(account).filter(one -> one.passwordHash() != null).isPresent();
    }

    public boolean any(UUID account) {
        return password(account) || !passkeys.of(account).isEmpty();
    }
}
