package org.scrubline.people;

import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * The roles of a programme's people. A role counts from the next request on and so does its end; what its holder signed
 * stays as it is and readable.
 */
@Service
@Transactional
public class Roles {

    /** Longest reason in characters. */
    static final int REASON_LENGTH = 300;

    private final RoleStore store;
    private final People people;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Roles(RoleStore store, People people, ApplicationEventPublisher events, Clock clock) {
        this.store = store;
        this.people = people;
        this.events = events;
        this.clock = clock;
    }

    /** Somebody and one role they hold. */
    public record Held(UUID personId, String name, Role role) {}

    /** Every role held now, by name of its holder. */
    @Transactional(readOnly = true)
    public List<Held> held(UUID programmeId) {
        return store.held(programmeId);
    }

    /** Everyone who holds or held a role in the programme, by name. */
    @Transactional(readOnly = true)
    public List<Person> everyone(UUID programmeId) {
        return store.everyone(programmeId);
    }

    /** Everyone who holds or held this role in the programme, by name. */
    @Transactional(readOnly = true)
    public List<Person> everHeld(UUID programmeId, Role role) {
        return store.everHeld(programmeId, role);
    }

    /** Gives a role to somebody the organisation knows already; giving one they hold changes nothing. */
    public void give(UUID programmeId, UUID personId, Role role) {
        people.grant(programmeId, personId, role);
    }

    /**
     * Ends a role. The last administrator's stays: nobody could give a role any more.
     *
     * @param reason in words, at most 300 characters; its refusals stand at the field {@code reason}
     * @return whose it was
     * @throws NotFound when the person does not hold the role in this programme
     */
    public Attempt<Held> end(UUID programmeId, UUID personId, Role role, String reason) {
        Held held = store.held(programmeId).stream()
                .filter(one -> one.personId().equals(personId) && one.role() == role)
                .findFirst()
                .orElseThrow(NotFound::new);
        String text = FreeText.tidy(reason);
        Optional<Refusal> unfit = text.isEmpty()
                ? Optional.of(Refusal.at("reason", "refusal.role.reason"))
                : FreeText.narrative("reason", text, REASON_LENGTH);
        if (unfit.isPresent()) {
            return Attempt.refused(unfit.get());
        }
        if (role == Role.ADMINISTRATOR
                && store.administratorsForUpdate(programmeId).size() < 2) {
            return Attempt.refused(Refusal.at("held", "refusal.role.last"));
        }
        if (!store.end(programmeId, personId, role, clock.instant().truncatedTo(ChronoUnit.MICROS))) {
            throw new NotFound();
        }
        events.publishEvent(new RoleEnded(personId, programmeId, held.name(), role, text));
        return Attempt.done(held);
    }
}
