package org.scrubline.platform.security;

import java.time.Clock;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.Memberships;
import org.scrubline.platform.Provisioned;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.provider.Connection;
import org.scrubline.platform.provider.ProviderFault;
import org.scrubline.platform.provider.ProviderFault.Reason;
import org.scrubline.platform.provider.ProviderIdentity;
import org.scrubline.platform.provider.Subjects;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Which account somebody enters whom a provider vouches for. Runs in the scope of the connection's organisation; nobody
 * enters another one through it.
 */
@Service
@Transactional
class ProviderLogIns {

    private final Subjects subjects;
    private final AccountStore accounts;
    private final Memberships memberships;
    private final Provisioned provisioned;
    private final Clock clock;

    ProviderLogIns(
            Subjects subjects, AccountStore accounts, Memberships memberships, Provisioned provisioned, Clock clock) {
        this.provisioned = provisioned;
        this.subjects = subjects;
        this.accounts = accounts;
        this.memberships = memberships;
        this.clock = clock;
    }

    /** The account that is connected, if it is open and the organisation's. */
    public AccountPrincipal enter(Connection connection, ProviderIdentity shown) {
        return subjects.account(shown)
                .flatMap(account -> memberships.find(account, connection.organisation()))
                .or(() -> opened(connection, shown))
                .map(ProviderLogIns::principal)
                .orElseThrow(() -> new ProviderFault(Reason.UNKNOWN));
    }

    /**
     * The first log-in to an account the directory opened, which connects it. From then on the directory's name for the
     * person leads to nobody: a later change of it must not hand the account, and its signatures, to somebody else.
     */
    private Optional<SignedIn> opened(Connection connection, ProviderIdentity shown) {
        return connection.provisioned()
                ? provisioned
                        .account(shown.subject())
                        .flatMap(account -> memberships.find(account, connection.organisation()))
                        .filter(owner -> subjects.link(owner, connection, shown))
                : Optional.empty();
    }

    /**
     * Connects the account of an invitation and enters it. An invitation of another organisation stays good: the refusal
     * undoes its use.
     */
    public AccountPrincipal welcome(Connection connection, ProviderIdentity shown, String codeHash) {
        SignedIn owner = accounts.useInvitation(codeHash, clock.instant())
                .flatMap(account -> memberships.find(account, connection.organisation()))
                .orElseThrow(() -> new ProviderFault(Reason.TAKEN));
        link(owner, connection, shown);
        return principal(owner);
    }

    /** Connects the account of somebody who is logged in. */
    public void link(SignedIn owner, Connection connection, ProviderIdentity shown) {
        UUID organisation = connection.organisation();
        if (!owner.tenantId().equals(organisation) || !subjects.link(owner, connection, shown)) {
            throw new ProviderFault(Reason.TAKEN);
        }
    }

    private static AccountPrincipal principal(SignedIn who) {
        return new AccountPrincipal(who.accountId(), who.tenantId(), who.username(), null, true);
    }
}
