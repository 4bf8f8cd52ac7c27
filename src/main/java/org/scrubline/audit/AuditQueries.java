package org.scrubline.audit;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Audited;
import org.scrubline.platform.Role;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Reads entries by their number, so that a page far back costs no more than the first. */
@Repository
class AuditQueries {

    private static final String ENTRIES = """
            select e.sequence, e.entered_at, e.device_at, e.action, e.actor_roles,
                e.actor_id, a.printed_name as actor_name,
                e.on_behalf_of, b.printed_name as on_behalf_of_name,
                e.about_id, s.printed_name as about_name,
                e.record_kind, e.record_id, e.record_version, e.record_label,
                e.reason, e.value_before, e.value_after, e.session_hash, e.source_address, e.app_version
            from audit_entry e
            left join person a on a.tenant_id = e.tenant_id and a.id = e.actor_id
            left join person b on b.tenant_id = e.tenant_id and b.id = e.on_behalf_of
            left join person s on s.tenant_id = e.tenant_id and s.id = e.about_id
            where e.tenant_id = :tenant
              and %s
              and (cast(:person as uuid) is null or e.actor_id = :person or e.about_id = :person)
              and (:anyAction or e.action in (:actions))
              and (cast(:from as timestamptz) is null or e.entered_at >= :from)
              and (cast(:until as timestamptz) is null or e.entered_at < :until)
              and (cast(:olderThan as bigint) is null or e.sequence < :olderThan)
              and (cast(:newerThan as bigint) is null or e.sequence > :newerThan)
            order by e.sequence %s
            limit :limit
            """;
    private static final String OF_PROGRAMME = """
            (e.programme_id = :scope
               or (e.programme_id is null
                   and exists (select 1
                               from programme_role r
                               where r.tenant_id = e.tenant_id
                                 and r.person_id = e.actor_id
                                 and r.programme_id = :scope)))
            """;
    private static final String SEEN = """
            e.about_id = :scope
              and e.seen_hour is not null
              and e.actor_id <> e.about_id
            """;
    private static final String OWN = "(e.about_id = :scope or e.actor_id = :scope)";
    private static final String USERNAMES = """
            select distinct a.username
            from programme_role r
            join person p on p.tenant_id = r.tenant_id and p.id = r.person_id
            join login_account a on a.id = p.account_id
            where r.tenant_id = :tenant
              and r.programme_id = :programme
              and r.ended_at is null
            """;

    /** The newest by number, some of which may have been written by a clock that was wrong. */
    private static final String NEWEST = """
            select max(entered_at)
            from (select entered_at
                  from audit_entry
                  where tenant_id = :tenant
                  order by sequence desc
                  limit 1000) newest
            """;

    private final JdbcClient jdbc;

    AuditQueries(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Whose entries: one of the conditions above, and the id it speaks of. */
    record Scope(String condition, UUID id) {

        static Scope programme(UUID id) {
            return new Scope(OF_PROGRAMME, id);
        }

        static Scope seen(UUID person) {
            return new Scope(SEEN, person);
        }

        static Scope own(UUID person) {
            return new Scope(OWN, person);
        }
    }

    /** The latest instant among the newest entries; empty when there are none. */
    Optional<Instant> newest() {
        return jdbc.sql(NEWEST)
                .param("tenant", TenantScope.require())
                .query((row, n) -> Optional.ofNullable(row.getObject(1, OffsetDateTime.class)))
                .single()
                .map(OffsetDateTime::toInstant);
    }

    /** Newest first; those newer than a number come oldest first. */
    List<AuditEntry> find(Scope scope, AuditFilter filter, AuditSlice.Place place, int limit) {
        return jdbc.sql(ENTRIES.formatted(scope.condition(), place.newerThan() == null ? "desc" : "asc"))
                .param("tenant", TenantScope.require())
                .param("scope", scope.id())
                .param("person", filter.person())
                .param("anyAction", filter.actions().isEmpty())
                .param("actions", filter.actions().isEmpty() ? Set.of("") : filter.actions())
                .param("from", utc(filter.from()))
                .param("until", utc(filter.until()))
                .param("olderThan", place.olderThan())
                .param("newerThan", place.newerThan())
                .param("limit", limit)
                .query((row, n) -> entry(row))
                .list();
    }

    List<String> usernames(UUID programme) {
        return jdbc.sql(USERNAMES)
                .param("tenant", TenantScope.require())
                .param("programme", programme)
                .query(String.class)
                .list();
    }

    private static AuditEntry entry(ResultSet row) throws SQLException {
        OffsetDateTime deviceAt = row.getObject("device_at", OffsetDateTime.class);
        return new AuditEntry(
                row.getLong("sequence"),
                row.getObject("entered_at", OffsetDateTime.class).toInstant(),
                deviceAt == null ? null : deviceAt.toInstant(),
                row.getString("action"),
                named(row, "actor_id", "actor_name"),
                roles(row.getString("actor_roles")),
                named(row, "on_behalf_of", "on_behalf_of_name"),
                named(row, "about_id", "about_name"),
                new Audited.Item(
                        row.getString("record_kind"),
                        row.getObject("record_id", UUID.class),
                        row.getObject("record_version", Integer.class),
                        row.getString("record_label")),
                row.getString("reason"),
                row.getString("value_before"),
                row.getString("value_after"),
                row.getString("session_hash"),
                row.getString("source_address"),
                row.getString("app_version"));
    }

    private static List<Role> roles(String stored) {
        return Stream.of(stored.split(","))
                .filter(role -> !role.isEmpty())
                .map(Role::valueOf)
                .toList();
    }

    private static AuditEntry.@Nullable Named named(ResultSet row, String id, String name) throws SQLException {
        UUID person = row.getObject(id, UUID.class);
        return person == null ? null : new AuditEntry.Named(person, row.getString(name));
    }

    private static @Nullable OffsetDateTime utc(@Nullable Instant at) {
        return at == null ? null : at.atOffset(ZoneOffset.UTC);
    }
}
