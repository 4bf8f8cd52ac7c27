package org.scrubline.people;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

@Repository
class PeopleStore {

    private static final String MEMBER = """
            select a.username, o.name as organisation, p.id, p.printed_name
            from person p
            join login_account a on a.id = p.account_id
            join organisation o on o.tenant_id = p.tenant_id
            where p.tenant_id = :tenant
              and p.account_id = :account
              and p.active
              and a.enabled
            """;
    private static final String GRANTS = """
            select programme_id, role
            from programme_role
            where tenant_id = :tenant
              and person_id = :person
              and ended_at is null
            """;
    private static final String PERSON = """
            select id, printed_name, active
            from person
            where tenant_id = :tenant
              and id = :id
            """;
    private static final String SIGNATORY = """
            select p.active and a.enabled as open, a.shared
            from person p
            join login_account a on a.id = p.account_id
            where p.tenant_id = :tenant
              and p.id = :id
            """;
    private static final String HOLDING = """
            select p.id, p.printed_name, p.active
            from programme_role r
            join person p on p.tenant_id = r.tenant_id and p.id = r.person_id
            where r.tenant_id = :tenant
              and r.programme_id = :programme
              and r.role = :role
              and r.ended_at is null
              and p.active
            order by p.printed_name, p.id
            """;
    private static final String NAMES = """
            select p.printed_name, a.username
            from person p
            join login_account a on a.id = p.account_id
            where p.tenant_id = :tenant
            """;
    private static final String INSERT_PERSON = """
            insert into person (tenant_id, id, account_id, printed_name, created_at)
            values (:tenant, :id, :account, :name, :at)
            """;
    private static final String INSERT_ROLE = """
            insert into programme_role (tenant_id, id, programme_id, person_id, role, granted_at)
            values (:tenant, :id, :programme, :person, :role, :at)
            on conflict (tenant_id, programme_id, person_id, role) where ended_at is null do nothing
            """;
    private static final String SET_ACCOUNT = """
            update person
            set account_id = :own
            where tenant_id = :tenant
              and account_id = :invited
            """;
    private static final String SET_ACTIVE = """
            update person
            set active = :active
            where tenant_id = :tenant
              and id = :id
            """;

    private static final String CONFLICT = """
            select exists (
                select 1
                from declared_conflict
                where tenant_id = :tenant
                  and ended_at is null
                  and ((person_id = :one and other_person_id = :other)
                       or (person_id = :other and other_person_id = :one)))
            """;
    private static final String INSERT_CONFLICT = """
            insert into declared_conflict (tenant_id, id, person_id, other_person_id, declared_at)
            values (:tenant, :id, :one, :other, :at)
            """;
    private static final String PRIOR = """
            select cases
            from prior_experience
            where tenant_id = :tenant
              and trainee_id = :trainee
              and procedure_code = :procedure
            order by declared_at desc, id desc
            limit 1
            """;
    private static final String PRIOR_OF_ALL = """
            select distinct on (trainee_id) trainee_id, cases
            from prior_experience
            where tenant_id = :tenant
              and procedure_code = :procedure
              and declared_at <= coalesce(cast(:knownAt as timestamptz), 'infinity')
            order by trainee_id, declared_at desc, id desc
            """;
    private static final String INSERT_PRIOR = """
            insert into prior_experience (tenant_id, id, trainee_id, procedure_code, cases, declared_at)
            values (:tenant, :id, :trainee, :procedure, :cases, :at)
            """;

    private final JdbcClient jdbc;

    PeopleStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Optional<SignedIn> member(UUID account) {
        UUID tenant = TenantScope.require();
        return jdbc.sql(MEMBER)
                .param("tenant", tenant)
                .param("account", account)
                .query((row, n) -> new SignedIn(
                        account,
                        row.getString("username"),
                        tenant,
                        row.getString("organisation"),
                        row.getObject("id", UUID.class),
                        row.getString("printed_name"),
                        grants(row.getObject("id", UUID.class))))
                .optional();
    }

    private Set<SignedIn.Grant> grants(UUID person) {
        return jdbc
                .sql(GRANTS)
                .param("tenant", TenantScope.require())
                .param("person", person)
                .query((row, n) -> new SignedIn.Grant(
                        row.getObject("programme_id", UUID.class), Role.valueOf(row.getString("role"))))
                .stream()
                .collect(Collectors.toSet());
    }

    Optional<Person> person(UUID id) {
        return jdbc.sql(PERSON)
                .param("tenant", TenantScope.require())
                .param("id", id)
                .query((row, n) -> person(row))
                .optional();
    }

    Optional<People.Signatory> signatory(UUID id) {
        return jdbc.sql(SIGNATORY)
                .param("tenant", TenantScope.require())
                .param("id", id)
                .query((row, n) -> new People.Signatory(row.getBoolean("open"), row.getBoolean("shared")))
                .optional();
    }

    List<Person> holding(UUID programme, Role role) {
        return jdbc.sql(HOLDING)
                .param("tenant", TenantScope.require())
                .param("programme", programme)
                .param("role", role.name())
                .query((row, n) -> person(row))
                .list();
    }

    private static Person person(ResultSet row) throws SQLException {
        return new Person(row.getObject("id", UUID.class), row.getString("printed_name"), row.getBoolean("active"));
    }

    /** How a person is called: in print, and at log-in. */
    record Names(String printed, String username) {}

    /** Of everybody who is or was in the organisation. */
    List<Names> names() {
        return jdbc.sql(NAMES)
                .param("tenant", TenantScope.require())
                .query((row, n) -> new Names(row.getString("printed_name"), row.getString("username")))
                .list();
    }

    void insertPerson(UUID id, UUID account, String name, Instant at) {
        jdbc.sql(INSERT_PERSON)
                .param("tenant", TenantScope.require())
                .param("id", id)
                .param("account", account)
                .param("name", name)
                .param("at", utc(at))
                .update();
    }

    /** The database refuses it for an account somebody ever entered. */
    void setAccount(UUID invited, UUID own) {
        jdbc.sql(SET_ACCOUNT)
                .param("tenant", TenantScope.require())
                .param("invited", invited)
                .param("own", own)
                .update();
    }

    /** False when there is no such person. */
    boolean setActive(UUID id, boolean active) {
        return jdbc.sql(SET_ACTIVE)
                        .param("tenant", TenantScope.require())
                        .param("id", id)
                        .param("active", active)
                        .update()
                == 1;
    }

    /** False when the person holds the role already. */
    boolean insertRole(UUID programme, UUID person, Role role, Instant at) {
        return jdbc.sql(INSERT_ROLE)
                        .param("tenant", TenantScope.require())
                        .param("id", UUID.randomUUID())
                        .param("programme", programme)
                        .param("person", person)
                        .param("role", role.name())
                        .param("at", utc(at))
                        .update()
                == 1;
    }

    boolean conflict(UUID one, UUID other) {
        return jdbc.sql(CONFLICT)
                .param("tenant", TenantScope.require())
                .param("one", one)
                .param("other", other)
                .query(Boolean.class)
                .single();
    }

    void insertConflict(UUID one, UUID other, Instant at) {
        jdbc.sql(INSERT_CONFLICT)
                .param("tenant", TenantScope.require())
                .param("id", UUID.randomUUID())
                .param("one", one)
                .param("other", other)
                .param("at", utc(at))
                .update();
    }

    int priorExperience(UUID trainee, String procedure) {
        return jdbc.sql(PRIOR)
                .param("tenant", TenantScope.require())
                .param("trainee", trainee)
                .param("procedure", procedure)
                .query(Integer.class)
                .optional()
                .orElse(0);
    }

    /** By trainee, as known at an instant; null is now. */
    Map<UUID, Integer> priorExperience(String procedure, @Nullable Instant knownAt) {
        Map<UUID, Integer> cases = new HashMap<>();
        jdbc.sql(PRIOR_OF_ALL)
                .param("tenant", TenantScope.require())
                .param("procedure", procedure)
                .param("knownAt", knownAt == null ? null : utc(knownAt))
                .query(row -> {
                    cases.put(row.getObject("trainee_id", UUID.class), row.getInt("cases"));
                });
        return cases;
    }

    /** Gives the id of the new row. */
    UUID insertPriorExperience(UUID trainee, String procedure, int cases, Instant at) {
        UUID id = UUID.randomUUID();
        jdbc.sql(INSERT_PRIOR)
                .param("tenant", TenantScope.require())
                .param("id", id)
                .param("trainee", trainee)
                .param("procedure", procedure)
                .param("cases", cases)
                .param("at", utc(at))
                .update();
        return id;
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }
}
