package org.scrubline.people;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import org.scrubline.people.LostFactors.Asked;
import org.scrubline.people.LostFactors.Owner;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Second factors somebody asked to have taken away. */
@Repository
class LostFactorStore {

    private static final String OWNERS = """
            select distinct p.id, p.account_id, a.username, p.printed_name
            from programme_role r
            join person p on p.tenant_id = r.tenant_id and p.id = r.person_id
            join login_account a on a.id = p.account_id
            where r.tenant_id = :tenant
              and r.programme_id = any(:programmes)
              and r.ended_at is null
              and p.active
              and not a.shared
            order by p.printed_name, p.id
            """;

    private static final String OPEN = """
            select c.id, c.person_id, p.printed_name, c.asked_by, b.printed_name as asker, c.reason, c.asked_at
            from factor_clearing c
            join person p on p.tenant_id = c.tenant_id and p.id = c.person_id
            join person b on b.tenant_id = c.tenant_id and b.id = c.asked_by
            where c.tenant_id = :tenant
              and c.confirmed_at is null
              and c.dropped_at is null
              and c.asked_at > :since
            order by c.asked_at, c.id
            """;

    private static final String INSERT = """
            insert into factor_clearing (tenant_id, id, person_id, asked_by, reason, asked_at)
            values (:tenant, :id, :person, :by, :reason, :at)
            on conflict do nothing
            """;

    private static final String DROP_OLD = """
            update factor_clearing
            set dropped_at = :at
            where tenant_id = :tenant
              and confirmed_at is null
              and dropped_at is null
              and asked_at <= :since
            """;

    private static final String END = """
            where tenant_id = :tenant
              and id = :id
              and confirmed_at is null
              and dropped_at is null
            """;

    private static final String CONFIRM = """
            update factor_clearing
            set confirmed_by = :by,
                confirmed_at = :at
            """ + END;

    private static final String DROP = """
            update factor_clearing
            set dropped_at = :at
            """ + END;

    private final JdbcClient jdbc;

    LostFactorStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Everyone with a role in one of the programmes and a log-in of their own, by name. */
    List<Owner> owners(List<UUID> programmes) {
        return jdbc.sql(OWNERS)
                .param("tenant", TenantScope.require())
                .param("programmes", programmes.toArray(UUID[]::new))
                .query((row, n) -> new Owner(
                        row.getObject("id", UUID.class),
                        row.getObject("account_id", UUID.class),
                        row.getString("username"),
                        row.getString("printed_name")))
                .list();
    }

    List<Asked> open(Instant since) {
        return jdbc.sql(OPEN)
                .param("tenant", TenantScope.require())
                .param("since", utc(since))
                .query((row, n) -> asked(row))
                .list();
    }

    /** False when somebody asked for this person already. */
    boolean insert(UUID id, UUID person, UUID by, String reason, Instant at) {
        return jdbc.sql(INSERT)
                        .param("tenant", TenantScope.require())
                        .param("id", id)
                        .param("person", person)
                        .param("by", by)
                        .param("reason", reason)
                        .param("at", utc(at))
                        .update()
                == 1;
    }

    void dropOld(Instant since, Instant at) {
        jdbc.sql(DROP_OLD)
                .param("tenant", TenantScope.require())
                .param("since", utc(since))
                .param("at", utc(at))
                .update();
    }

    /** False when it is over already: of two who confirm at once, one does. */
    boolean confirm(UUID id, UUID by, Instant at) {
        return jdbc.sql(CONFIRM)
                        .param("tenant", TenantScope.require())
                        .param("id", id)
                        .param("by", by)
                        .param("at", utc(at))
                        .update()
                == 1;
    }

    boolean drop(UUID id, Instant at) {
        return jdbc.sql(DROP)
                        .param("tenant", TenantScope.require())
                        .param("id", id)
                        .param("at", utc(at))
                        .update()
                == 1;
    }

    private static Asked asked(ResultSet row) throws SQLException {
        return new Asked(
                row.getObject("id", UUID.class),
                row.getObject("person_id", UUID.class),
                row.getString("printed_name"),
                row.getObject("asked_by", UUID.class),
                row.getString("asker"),
                row.getString("reason"),
                row.getObject("asked_at", OffsetDateTime.class).toInstant());
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }
}
