package org.scrubline.provision;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** People with a log-in of their own, and what the directory says of them. */
@Repository
class ProvisionStore {

    private static final String FROM = """
            from person p
            join login_account a on a.id = p.account_id
            left join provisioned_person d on d.tenant_id = p.tenant_id and d.person_id = p.id
            where p.tenant_id = :tenant
              and not a.shared
              and d.removed_at is null
              and (cast(:id as uuid) is null or p.id = :id)
              and (cast(:username as text) is null or lower(a.username) = lower(:username))
              and (cast(:external as text) is null or d.external_id = :external)
            """;

    private static final String PAGE = """
            select p.id, a.id as account, d.external_id, a.username, p.printed_name, p.active, p.created_at,
                   coalesce(d.changed_at, p.created_at) as changed_at
            """ + FROM + """
            order by p.created_at, p.id
            offset :skip
            limit :count
            """;

    private static final String INSERT = """
            insert into provisioned_person (tenant_id, person_id, external_id, opened_here, changed_at)
            values (:tenant, :person, :external, :opened, :at)
            on conflict (tenant_id, person_id) do update
            set external_id = excluded.external_id,
                changed_at = excluded.changed_at
            """;

    private static final String TAKEN = """
            select exists (
                select 1
                from provisioned_person
                where tenant_id = :tenant
                  and external_id = :external
                  and person_id <> :person)
            """;

    private static final String REMOVE = """
            update provisioned_person
            set removed_at = :at,
                external_id = null,
                changed_at = :at
            where tenant_id = :tenant
              and person_id = :person
            """;

    private static final String OPENED_HERE = """
            select p.account_id
            from provisioned_person d
            join person p on p.tenant_id = d.tenant_id and p.id = d.person_id
            where d.tenant_id = :tenant
              and d.external_id = :external
              and d.opened_here
              and p.active
            """;

    private static final String WITHOUT_ROLE = """
            select p.id, a.id as account, d.external_id, a.username, p.printed_name, p.active, p.created_at,
                   d.changed_at
            from provisioned_person d
            join person p on p.tenant_id = d.tenant_id and p.id = d.person_id
            join login_account a on a.id = p.account_id
            where d.tenant_id = :tenant
              and d.removed_at is null
              and p.active
              and not exists (
                  select 1
                  from programme_role r
                  where r.tenant_id = p.tenant_id
                    and r.person_id = p.id
                    and r.ended_at is null)
            order by p.printed_name, p.id
            """;

    private final JdbcClient jdbc;

    ProvisionStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Optional<ProvisionedUser> one(UUID id) {
        return page(id, UserFilter.NONE, 0, 1).stream().findFirst();
    }

    List<ProvisionedUser> page(UserFilter filter, int skip, int count) {
        return page(null, filter, skip, count);
    }

    private List<ProvisionedUser> page(@Nullable UUID id, UserFilter filter, int skip, int count) {
        return chosen(PAGE, id, filter)
                .param("skip", skip)
                .param("count", count)
                .query((row, n) -> user(row))
                .list();
    }

    int count(UserFilter filter) {
        return chosen("select count(*)\n" + FROM, null, filter)
                .query(Integer.class)
                .single();
    }

    private JdbcClient.StatementSpec chosen(String sql, @Nullable UUID id, UserFilter filter) {
        return jdbc.sql(sql)
                .param("tenant", TenantScope.require())
                .param("id", id)
                .param("username", filter.username())
                .param("external", filter.externalId());
    }

    List<ProvisionedUser> withoutRole() {
        return jdbc.sql(WITHOUT_ROLE)
                .param("tenant", TenantScope.require())
                .query((row, n) -> user(row))
                .list();
    }

    /** Keeps what the directory says; {@code openedHere} counts the first time alone. */
    void keep(UUID person, @Nullable String externalId, boolean openedHere, Instant at) {
        jdbc.sql(INSERT)
                .param("tenant", TenantScope.require())
                .param("person", person)
                .param("external", externalId)
                .param("opened", openedHere)
                .param("at", utc(at))
                .update();
    }

    /** Whether somebody else has it. */
    boolean taken(String externalId, UUID person) {
        return jdbc.sql(TAKEN)
                .param("tenant", TenantScope.require())
                .param("external", externalId)
                .param("person", person)
                .query(Boolean.class)
                .single();
    }

    void remove(UUID person, Instant at) {
        jdbc.sql(REMOVE)
                .param("tenant", TenantScope.require())
                .param("person", person)
                .param("at", utc(at))
                .update();
    }

    Optional<UUID> accountOpenedHere(String externalId) {
        return jdbc.sql(OPENED_HERE)
                .param("tenant", TenantScope.require())
                .param("external", externalId)
                .query(UUID.class)
                .optional();
    }

    private static ProvisionedUser user(ResultSet row) throws SQLException {
        return new ProvisionedUser(
                row.getObject("id", UUID.class),
                row.getObject("account", UUID.class),
                row.getString("external_id"),
                row.getString("username"),
                row.getString("printed_name"),
                row.getBoolean("active"),
                row.getObject("created_at", OffsetDateTime.class).toInstant(),
                row.getObject("changed_at", OffsetDateTime.class).toInstant());
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }
}
