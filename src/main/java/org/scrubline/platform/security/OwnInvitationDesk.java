package org.scrubline.platform.security;

import java.time.Clock;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Memberships;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TenantScope;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** In the scope of the organisation that invited, and all or nothing. */
@Service
@Transactional
class OwnInvitationDesk {

    private final AccountStore accounts;
    private final Memberships memberships;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    OwnInvitationDesk(AccountStore accounts, Memberships memberships, ApplicationEventPublisher events, Clock clock) {
        this.accounts = accounts;
        this.memberships = memberships;
        this.events = events;
        this.clock = clock;
    }

    /** The account that was made for the invitation is closed; its name is given to nobody else. */
    public Attempt<SignedIn> takeUp(UUID account, AccountStore.Invited invited, String hash) {
        UUID organisation = TenantScope.require();
        if (accounts.organisations(account).contains(organisation)) {
            return refused("refusal.invitation.member");
        }
        if (shared(account) || shared(invited.account())) {
            return refused("refusal.invitation.shared");
        }
        if (memberships.find(invited.account(), organisation).isEmpty()
                || accounts.useInvitation(hash, clock.instant()).isEmpty()) {
            return refused("refusal.invitation.code");
        }
        accounts.enterToo(account, organisation);
        SignedIn there = memberships.enteredWith(invited.account(), account);
        accounts.close(invited.account());
        events.publishEvent(new AccountChanged("invitation-taken-up", there));
        return Attempt.done(there);
    }

    private boolean shared(UUID account) {
        return accounts.byId(account).orElseThrow().shared();
    }

    private static Attempt<SignedIn> refused(String key) {
        return Attempt.refused(Refusal.at("code", key));
    }
}
