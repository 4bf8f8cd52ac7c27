package org.scrubline.support;

import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;
import org.scrubline.people.Organisations;
import org.scrubline.people.People;
import org.scrubline.people.Programme;
import org.scrubline.people.Site;
import org.scrubline.platform.Accounts;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Memberships;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TenantScope;
import org.scrubline.signoff.SigningStatements;
import org.springframework.boot.test.context.TestComponent;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Makes organisations with people for one test. Names are unique, so tests never meet. */
@TestComponent
public class TestOrganisations {

    /** Every test person's password. */
    public static final String PASSWORD = "a quiet test sentence";

    /** What the application keeps of {@link #PASSWORD}: to hash it anew for every person took half the time of the tests. */
    private static final AtomicReference<String> KEPT = new AtomicReference<>();

    private final Organisations organisations;
    private final People people;
    private final Accounts accounts;
    private final Memberships memberships;
    private final SigningStatements statements;
    private final JdbcClient jdbc;

    public TestOrganisations(
            Organisations organisations,
            People people,
            Accounts accounts,
            Memberships memberships,
            SigningStatements statements,
            JdbcClient jdbc) {
        this.jdbc = jdbc;
        this.statements = statements;
        this.organisations = organisations;
        this.people = people;
        this.accounts = accounts;
        this.memberships = memberships;
    }

    /** An organisation with one programme and one site, and no people yet. */
    public TestOrganisation open() {
        UUID tenant = organisations.open("Organisation " + UUID.randomUUID());
        return TenantScope.call(
                tenant,
                () -> new TestOrganisation(
                        tenant,
                        people.addProgramme("Programme", "Europe/London").orThrow(),
                        people.addSite("OEI", "Sankt Orlin Eye Institute", "Europe/London")
                                .orThrow()));
    }

    /** The organisation settings name, with a new programme for each call; it stands for all tests of a run. */
    public TestOrganisation at(UUID tenant) {
        return TenantScope.call(tenant, () -> {
            if (people.sites().isEmpty()) {
                organisations.openHere("Organisation " + tenant);
                people.addSite("OEI", "Sankt Orlin Eye Institute", "Europe/London")
                        .orThrow();
            }
            return new TestOrganisation(
                    tenant,
                    people.addProgramme("Programme " + UUID.randomUUID(), "Europe/London")
                            .orThrow(),
                    people.sites().get(0));
        });
    }

    /** One organisation under test. */
    public class TestOrganisation {

        private final UUID tenant;
        private final Programme programme;
        private final Site site;
        private final Map<UUID, UUID> accountOf = new ConcurrentHashMap<>();

        TestOrganisation(UUID tenant, Programme programme, Site site) {
            this.tenant = tenant;
            this.programme = programme;
            this.site = site;
        }

        public UUID tenant() {
            return tenant;
        }

        /** A further programme of the same organisation, at the same site, with nobody in it. */
        public TestOrganisation anotherProgramme() {
            return in(() -> new TestOrganisation(
                    tenant,
                    people.addProgramme("Another programme", "Europe/London").orThrow(),
                    site));
        }

        public Programme programme() {
            return programme;
        }

        public Site site() {
            return site;
        }

        /** Runs work inside this organisation's tenant scope. */
        public <T> T in(Supplier<T> work) {
            return TenantScope.call(tenant, work);
        }

        /** Adds a person who can log in with {@link #PASSWORD} and has accepted what a signature means. */
        public SignedIn join(String printedName, Role role) {
            SignedIn joined = joinNew(printedName, role);
            in(() -> {
                statements.accept(joined);
                return true;
            });
            return joined;
        }

        /** Adds a person who can log in with {@link #PASSWORD} and has never signed anything. */
        public SignedIn joinNew(String printedName, Role role) {
            return in(() -> enter(people.addPerson(programme.id(), printedName, username(), role)));
        }

        /** Adds a log-in several people use, with {@link #PASSWORD}. */
        public SignedIn joinShared(String printedName, Role role) {
            return in(() -> enter(people.addSharedLogIn(programme.id(), printedName, username(), role)));
        }

        private SignedIn enter(Attempt<People.NewPerson> added) {
            People.NewPerson person = added.orThrow();
            givePassword(person.accountId());
            accountOf.put(person.personId(), person.accountId());
            return now(person.personId());
        }

        private void givePassword(UUID account) {
            if (KEPT.get() == null) {
                accounts.setFirstPassword(account, PASSWORD).orThrow();
                KEPT.set(jdbc.sql("select password_hash from login_account where id = ?")
                        .param(account)
                        .query(String.class)
                        .single());
            } else {
                jdbc.sql("update login_account set password_hash = ? where id = ?")
                        .params(KEPT.get(), account)
                        .update();
            }
        }

        private static String username() {
            return "u" + UUID.randomUUID().toString().substring(0, 12);
        }

        /** Who the person is now, with current roles. */
        public SignedIn now(UUID personId) {
            UUID account = java.util.Objects.requireNonNull(accountOf.get(personId));
            return in(() -> memberships.find(account, tenant).orElseThrow());
        }
    }
}
