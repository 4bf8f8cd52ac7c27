package org.scrubline.people;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Accounts;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.InvitationLife;
import org.scrubline.platform.Refusal;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Codes by which people come in for the first time. Whoever never came in can be invited again, which ends the code before;
 * whoever did, by a password or through a provider, can be invited by nobody.
 */
@Service
@Transactional
public class Invitations {

    private final InvitationStore store;
    private final Accounts accounts;
    private final ApplicationEventPublisher events;

    Invitations(InvitationStore store, Accounts accounts, ApplicationEventPublisher events) {
        this.store = store;
        this.accounts = accounts;
        this.events = events;
    }

    /**
     * Somebody of a programme who never came in.
     *
     * @param endsAt when the last code made for them ends or ended; null when none was made
     */
    public record Waiting(
            UUID personId,
            UUID accountId,
            String name,
            String username,
            @Nullable Instant endsAt) {}

    /**
     * A code just made; shown once and kept nowhere.
     *
     * @param username the log-in name it opens
     */
    public record Made(String username, String code, InvitationLife life) {}

    /** By name. */
    @Transactional(readOnly = true)
    public List<Waiting> waiting(UUID programmeId) {
        return store.waiting(programmeId);
    }

    /** Invites somebody who never came in; its refusal stands at the field {@code person}. */
    public Attempt<Made> make(UUID programmeId, UUID personId, InvitationLife life) {
        return store.waiting(programmeId).stream()
                .filter(one -> one.personId().equals(personId))
                .findFirst()
                .map(one -> {
                    String code = accounts.invite(one.accountId(), life);
                    events.publishEvent(new PersonInvited(personId, programmeId, one.name(), life));
                    return Attempt.done(new Made(one.username(), code, life));
                })
                .orElseGet(() -> Attempt.refused(Refusal.at("person", "refusal.invitation.person")));
    }
}
