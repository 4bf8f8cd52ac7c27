package org.scrubline.platform.security;

import java.time.Clock;
import java.util.Optional;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SecretCode;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TenantScope;
import org.springframework.stereotype.Component;

/** Takes up the invitation of one organisation with the log-in somebody has in another. */
@Component
public class OwnInvitation {

    private final AccountStore accounts;
    private final OwnInvitationDesk desk;
    private final Clock clock;

    OwnInvitation(AccountStore accounts, OwnInvitationDesk desk, Clock clock) {
        this.accounts = accounts;
        this.desk = desk;
        this.clock = clock;
    }

    /**
     * The owner belongs to the organisation of the code from then on.
     *
     * @param owner logged in, in whatever organisation
     * @return who they are there, or what is wrong at the field {@code code}
     */
    public Attempt<SignedIn> takeUp(SignedIn owner, String code) {
        String hash = SecretCode.hash(code);
        Optional<AccountStore.Invited> invited = accounts.invitedTo(hash, clock.instant());
        return invited.map(one -> TenantScope.call(one.organisation(), () -> desk.takeUp(owner.accountId(), one, hash)))
                .orElseGet(() -> Attempt.refused(Refusal.at("code", "refusal.invitation.code")));
    }
}
