package org.scrubline.people;

import java.time.Clock;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.platform.Accounts;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.Memberships;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TenantScope;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional
class StoredPeople implements People, Memberships {

    static final int NAME_LENGTH = 120;

    private final PeopleStore people;
    private final PlaceStore places;
    private final Accounts accounts;
    private final Ledger ledger;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    StoredPeople(
            PeopleStore people,
            PlaceStore places,
            Accounts accounts,
            Ledger ledger,
            ApplicationEventPublisher events,
            Clock clock) {
        this.people = people;
        this.places = places;
        this.accounts = accounts;
        this.ledger = ledger;
        this.events = events;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<SignedIn> find(UUID accountId, UUID tenantId) {
        return people.member(accountId);
    }

    @Override
    public SignedIn enteredWith(UUID invitedAccount, UUID ownAccount) {
        people.setAccount(invitedAccount, ownAccount);
        return people.member(ownAccount).orElseThrow(NotFound::new);
    }

    @Override
    @Transactional(readOnly = true)
    public Programme programme(UUID id) {
        return programmes().stream()
                .filter(programme -> programme.id().equals(id))
                .findFirst()
                .orElseThrow(NotFound::new);
    }

    @Override
    @Transactional(readOnly = true)
    public List<Programme> programmes() {
        return places.programmes();
    }

    @Override
    @Transactional(readOnly = true)
    public List<Site> sites() {
        return places.sites();
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Site> site(UUID id) {
        return places.site(id);
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Person> person(UUID id) {
        return people.person(id);
    }

    @Override
    @Transactional(readOnly = true)
    public List<Person> holding(UUID programmeId, Role role) {
        return people.holding(programmeId, role);
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Signatory> signatory(UUID personId) {
        return people.signatory(personId);
    }

    @Override
    @Transactional(readOnly = true)
    public boolean inConflict(UUID onePerson, UUID otherPerson) {
        return people.conflict(onePerson, otherPerson);
    }

    @Override
    @Transactional(readOnly = true)
    public int priorExperience(UUID traineeId, String procedureCode) {
        return people.priorExperience(traineeId, procedureCode);
    }

    @Override
    @Transactional(readOnly = true)
    public Map<UUID, Integer> priorExperience(String procedureCode) {
        return people.priorExperience(procedureCode, null);
    }

    @Override
    @Transactional(readOnly = true)
    public Map<UUID, Integer> priorExperience(String procedureCode, Instant knownAt) {
        return people.priorExperience(procedureCode, knownAt);
    }

    @Override
    public Attempt<Programme> addProgramme(String name, String zone) {
        List<Refusal> reasons = checkPlace("name", name, zone);
        if (!reasons.isEmpty()) {
            return Attempt.refused(reasons);
        }
        Programme programme = new Programme(UUID.randomUUID(), FreeText.tidy(name), ZoneId.of(zone));
        return places.insertProgramme(programme, clock.instant())
                ? Attempt.done(programme)
                : Attempt.refused(Refusal.at("name", "refusal.programme.name", programme.name()));
    }

    @Override
    public Attempt<Site> addSite(String code, String name, String zone) {
        List<Refusal> reasons = checkPlace("name", name, zone);
        if (!code.strip().matches("[A-Z0-9]{2,8}")) {
            reasons.add(Refusal.at("code", "refusal.site.code.form"));
        }
        if (!reasons.isEmpty()) {
            return Attempt.refused(reasons);
        }
        Site site = new Site(UUID.randomUUID(), code.strip(), FreeText.tidy(name), ZoneId.of(zone), null);
        return places.insertSite(site)
                ? Attempt.done(site)
                : Attempt.refused(Refusal.at("code", "refusal.site.code.taken", site.code()));
    }

    @Override
    public Attempt<NewPerson> addPerson(UUID programmeId, String printedName, String username, Role role) {
        return add(programmeId, new Called(printedName, username), role, tenant -> accounts.open(username, tenant));
    }

    @Override
    public Attempt<NewPerson> addSharedLogIn(UUID programmeId, String printedName, String username, Role role) {
        return add(
                programmeId, new Called(printedName, username), role, tenant -> accounts.openShared(username, tenant));
    }

    private Attempt<NewPerson> add(UUID programmeId, Called called, Role role, Function<UUID, Attempt<UUID>> open) {
        programme(programmeId);
        return add(called, open)
                .fold(
                        added -> {
                            people.insertRole(programmeId, added.personId(), role, clock.instant());
                            events.publishEvent(
                                    new RoleGiven("person-added", added.personId(), programmeId, called.name(), role));
                            return Attempt.done(added);
                        },
                        Attempt::refused);
    }

    private Attempt<NewPerson> add(Called called, Function<UUID, Attempt<UUID>> open) {
        List<Refusal> reasons = check(called);
        if (!reasons.isEmpty()) {
            return Attempt.refused(reasons);
        }
        return open.apply(TenantScope.require())
                .fold(
                        account -> {
                            UUID person = UUID.randomUUID();
                            people.insertPerson(person, account, called.name(), clock.instant());
                            return Attempt.done(new NewPerson(person, account));
                        },
                        Attempt::refused);
    }

    @Override
    public Attempt<NewPerson> addWithoutRole(String printedName, String username) {
        return add(new Called(printedName, username), tenant -> accounts.open(username, tenant));
    }

    /** Names as they were typed. */
    private record Called(String typedName, String typedUsername) {
        String name() {
            return FreeText.tidy(typedName);
        }

        String username() {
            return FreeText.tidy(typedUsername);
        }
    }

    private List<Refusal> check(Called called) {
        List<Refusal> reasons = checkName("printedName", called.name());
        if (reasons.isEmpty()) {
            List<PeopleStore.Names> there = people.names();
            LookAlikes.check(
                            "printedName",
                            called.name(),
                            there.stream().map(PeopleStore.Names::printed).toList())
                    .ifPresent(reasons::add);
            LookAlikes.check(
                            "username",
                            called.username(),
                            there.stream().map(PeopleStore.Names::username).toList())
                    .ifPresent(reasons::add);
        }
        return reasons;
    }

    @Override
    public void setActive(UUID personId, boolean active) {
        if (!people.setActive(personId, active)) {
            throw new NotFound();
        }
    }

    @Override
    public void grant(UUID programmeId, UUID personId, Role role) {
        if (people.insertRole(programmeId, personId, role, clock.instant())) {
            String name = person(personId).orElseThrow(NotFound::new).printedName();
            events.publishEvent(new RoleGiven("role-given", personId, programmeId, name, role));
        }
    }

    @Override
    public void declareConflict(UUID personId, UUID otherPersonId) {
        people.insertConflict(personId, otherPersonId, clock.instant());
    }

    @Override
    public void declarePriorExperience(UUID traineeId, String procedureCode, int cases) {
        UUID declared = people.insertPriorExperience(traineeId, procedureCode, cases, clock.instant());
        ledger.append(LeafKind.PRIOR_EXPERIENCE, declared);
    }

    private static List<Refusal> checkPlace(String field, String name, String zone) {
        List<Refusal> reasons = checkName(field, FreeText.tidy(name));
        try {
            ZoneId.of(zone);
        } catch (DateTimeException e) {
            reasons.add(Refusal.at("zone", "refusal.zone"));
        }
        return reasons;
    }

    private static List<Refusal> checkName(String field, String name) {
        List<Refusal> reasons = new ArrayList<>();
        if (name.isEmpty()) {
            reasons.add(Refusal.at(field, "refusal.name.empty"));
        }
        FreeText.check(field, name, NAME_LENGTH).ifPresent(reasons::add);
        return reasons;
    }
}
