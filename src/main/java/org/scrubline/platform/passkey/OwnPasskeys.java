package org.scrubline.platform.passkey;

import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Passkeys;
import org.scrubline.platform.Passkeys.Passkey;
import org.scrubline.platform.SignedIn;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What a person does with their own passkeys, with the entry that it was done. */
@Service
@Transactional
public class OwnPasskeys {

    private final Passkeys passkeys;
    private final ApplicationEventPublisher events;

    OwnPasskeys(Passkeys passkeys, ApplicationEventPublisher events) {
        this.passkeys = passkeys;
        this.events = events;
    }

    /** As {@link Passkeys#register}. */
    public Attempt<Passkey> add(SignedIn who, String label, String attestation, byte[] challenge) {
        Attempt<Passkey> added = passkeys.register(who.accountId(), label, attestation, challenge);
        if (added instanceof Attempt.Done<Passkey> done) {
            events.publishEvent(new PasskeyChanged("passkey-added", who, done.value()));
        }
        return added;
    }

    /** As {@link Passkeys#remove}. */
    public void remove(SignedIn who, Passkey key) {
        UUID account = who.accountId();
        passkeys.remove(account, key.id());
        events.publishEvent(new PasskeyChanged("passkey-removed", who, key));
    }
}
