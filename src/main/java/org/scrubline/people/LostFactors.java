package org.scrubline.people;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FactorReset;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Takes away a second factor somebody lost, by two administrators of a programme the person belongs to: one asks with a reason,
 * another confirms within a day. Neither may be the person.
 */
@Service
@Transactional
public class LostFactors {

    /** How long a request waits for the second administrator. */
    static final Duration WAITS = Duration.ofDays(1);

    /** Longest reason in characters. */
    static final int REASON_LENGTH = 300;

    private final LostFactorStore store;
    private final FactorReset factors;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    LostFactors(LostFactorStore store, FactorReset factors, ApplicationEventPublisher events, Clock clock) {
        this.store = store;
        this.factors = factors;
        this.events = events;
        this.clock = clock;
    }

    /** Somebody with a log-in of their own. */
    public record Owner(UUID personId, UUID account, String username, String name) {}

    /** What one administrator asked and nobody has confirmed. */
    public record Asked(
            UUID id, UUID personId, String name, UUID askedBy, String askedByName, String reason, Instant askedAt) {}

    /** The people of the administrator's programmes who have a second factor, without themselves. */
    @Transactional(readOnly = true)
    public List<Owner> owners(SignedIn administrator) {
        return store.owners(administered(administrator)).stream()
                .filter(owner -> !owner.personId().equals(administrator.personId()))
                .filter(owner -> factors.any(owner.account()))
                .toList();
    }

    /** What waits and is about one of them; what they asked themselves waits for somebody else. */
    @Transactional(readOnly = true)
    public List<Asked> waiting(SignedIn administrator) {
        List<UUID> people = owners(administrator).stream().map(Owner::personId).toList();
        return store.open(earliest()).stream()
                .filter(asked -> people.contains(asked.personId()))
                .toList();
    }

    /** Asks for somebody's second factor to be taken away; the fields of a refusal are {@code person} and {@code reason}. */
    public Attempt<UUID> ask(SignedIn administrator, UUID personId, String reason) {
        Owner owner = owner(administrator, personId).orElseThrow(NotFound::new);
        String text = FreeText.tidy(reason);
        Optional<Refusal> unfit = text.isEmpty()
                ? Optional.of(Refusal.at("reason", "refusal.factor.reason"))
                : FreeText.narrative("reason", text, REASON_LENGTH);
        if (unfit.isPresent()) {
            return Attempt.refused(unfit.get());
        }
        UUID id = UUID.randomUUID();
        store.dropOld(earliest(), now());
        if (!store.insert(id, personId, administrator.personId(), text, now())) {
            return Attempt.refused(Refusal.at("person", "refusal.factor.asked", owner.name()));
        }
        events.publishEvent(new FactorCleared("factor-clearing-asked", owner.personId(), owner.name(), text));
        return Attempt.done(id);
    }

    /**
     * Confirms what another administrator asked, and it is done.
     *
     * @return whose factor it was
     * @throws NotFound when nothing of that id waits that is this administrator's to see
     */
    public Attempt<String> confirm(SignedIn administrator, UUID id) {
        Asked asked = waiting(administrator, id);
        if (asked.askedBy().equals(administrator.personId())) {
            return Attempt.refused(Refusal.of("refusal.factor.second"));
        }
        Owner owner = owner(administrator, asked.personId()).orElseThrow(NotFound::new);
        if (!store.confirm(id, administrator.personId(), now())) {
            throw new NotFound();
        }
        factors.clear(owner.account(), owner.username());
        events.publishEvent(new FactorCleared("factor-cleared", owner.personId(), owner.name(), asked.reason()));
        return Attempt.done(owner.name());
    }

    /** Ends a request without doing anything. */
    public void drop(SignedIn administrator, UUID id) {
        Asked asked = waiting(administrator, id);
        if (!store.drop(id, now())) {
            throw new NotFound();
        }
        events.publishEvent(
                new FactorCleared("factor-clearing-dropped", asked.personId(), asked.name(), asked.reason()));
    }

    private Asked waiting(SignedIn administrator, UUID id) {
        return waiting(administrator).stream()
                .filter(asked -> asked.id().equals(id))
                .findFirst()
                .orElseThrow(NotFound::new);
    }

    private Optional<Owner> owner(SignedIn administrator, UUID personId) {
        return owners(administrator).stream()
                .filter(owner -> owner.personId().equals(personId))
                .findFirst();
    }

    private static List<UUID> administered(SignedIn who) {
        List<UUID> programmes = who.grants().stream()
                .filter(grant -> grant.role() == Role.ADMINISTRATOR)
                .map(SignedIn.Grant::programmeId)
                .toList();
        if (programmes.isEmpty()) {
            throw new NotFound();
        }
        return programmes;
    }

    private Instant earliest() {
        return now().minus(WAITS);
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }
}
