package org.scrubline.provision;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.people.People;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.OpenLogIns;
import org.scrubline.platform.Provisioned;
import org.scrubline.platform.Refusal;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * What an organisation's directory does with its people. Log-in name and printed name are given once, at the beginning:
 * signed records carry them. Nothing is ever deleted; whoever is closed keeps their signatures (decision 0026).
 */
@Service
@Transactional
public class Provisioning implements Provisioned {

    /** Longest name of a directory for somebody, in characters. */
    static final int EXTERNAL_ID_LENGTH = 255;

    private final ProvisionStore store;
    private final People people;
    private final OpenLogIns logIns;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Provisioning(
            ProvisionStore store, People people, OpenLogIns logIns, ApplicationEventPublisher events, Clock clock) {
        this.store = store;
        this.people = people;
        this.logIns = logIns;
        this.events = events;
        this.clock = clock;
    }

    /** Some of the people, in the order they came. */
    @Transactional(readOnly = true)
    public List<ProvisionedUser> page(UserFilter filter, int skip, int count) {
        return store.page(filter, skip, count);
    }

    @Transactional(readOnly = true)
    public int count(UserFilter filter) {
        return store.count(filter);
    }

    /**
     * One person.
     *
     * @throws NotFound when the organisation has no such person, or its directory has removed them
     */
    @Transactional(readOnly = true)
    public ProvisionedUser user(UUID id) {
        return store.one(id).orElseThrow(NotFound::new);
    }

    /** Whom the directory brought and nobody has given a role yet. */
    @Transactional(readOnly = true)
    public List<ProvisionedUser> withoutRole() {
        return store.withoutRole();
    }

    /** The account the directory opened under that name; once somebody entered it, the name leads nowhere new. */
    @Override
    @Transactional(readOnly = true)
    public Optional<UUID> account(String externalId) {
        return store.accountOpenedHere(externalId);
    }

    /** Opens an account without a password and without a role. */
    public Attempt<ProvisionedUser> create(Wanted wanted) {
        Optional<Refusal> external = wanted.externalId().flatMap(id -> refusedId(id, new UUID(0, 0)));
        if (external.isPresent()) {
            return Attempt.refused(external.get());
        }
        return people.addWithoutRole(
                        wanted.printedName().orElse(""), wanted.username().orElse(""))
                .fold(
                        added -> {
                            store.keep(added.personId(), externalId(wanted, null), true, now());
                            tell("person-provisioned", user(added.personId()));
                            wanted.active().ifPresent(active -> setActive(user(added.personId()), active));
                            return Attempt.done(user(added.personId()));
                        },
                        Attempt::refused);
    }

    /** Changes what may be changed; a name given before, given anew, is refused. */
    public Attempt<ProvisionedUser> change(UUID id, Wanted wanted) {
        ProvisionedUser before = user(id);
        if (wanted.username()
                .filter(name -> !name.equalsIgnoreCase(before.username()))
                .isPresent()) {
            return Attempt.refused(Refusal.at("userName", "refusal.provision.given-once"));
        }
        if (wanted.printedName()
                .filter(name -> !FreeText.tidy(name).equals(before.printedName()))
                .isPresent()) {
            return Attempt.refused(Refusal.at("displayName", "refusal.provision.given-once"));
        }
        Optional<Refusal> external = wanted.externalId().flatMap(given -> refusedId(given, id));
        if (external.isPresent()) {
            return Attempt.refused(external.get());
        }
        store.keep(id, externalId(wanted, before.externalId()), false, now());
        wanted.active().ifPresent(active -> setActive(before, active));
        return Attempt.done(user(id));
    }

    /** Closes somebody's access and forgets the directory's name for them. The person and all they signed stay. */
    public void remove(UUID id) {
        ProvisionedUser before = user(id);
        store.keep(id, before.externalId(), false, now());
        setActive(before, false);
        store.remove(id, now());
    }

    private void setActive(ProvisionedUser user, boolean active) {
        if (user.active() == active) {
            return;
        }
        people.setActive(user.id(), active);
        if (!active) {
            logIns.endAll(user.username());
        }
        tell(active ? "person-reopened" : "person-closed", user);
    }

    private Optional<Refusal> refusedId(String externalId, UUID person) {
        if (externalId.length() > EXTERNAL_ID_LENGTH || FreeText.hasForbiddenCharacter(externalId)) {
            return Optional.of(Refusal.at("externalId", "refusal.provision.external-id", EXTERNAL_ID_LENGTH));
        }
        return store.taken(externalId, person)
                ? Optional.of(Refusal.at("externalId", "refusal.provision.external-id.taken"))
                : Optional.empty();
    }

    private static @Nullable String externalId(Wanted wanted, @Nullable String before) {
        return wanted.externalId()
                .map(given -> given.isEmpty() ? null : given)
                .orElse(wanted.externalId().isPresent() ? null : before);
    }

    private void tell(String action, ProvisionedUser user) {
        events.publishEvent(new PersonProvisioned(action, user.id(), user.printedName()));
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }
}
