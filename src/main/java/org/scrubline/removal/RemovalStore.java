package org.scrubline.removal;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.CredentialUsed;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.core.simple.JdbcClient.StatementSpec;
import org.springframework.stereotype.Repository;

/** Requests, tombstones, and the one call by which records go. */
@Repository
class RemovalStore {

    private static final String ENDED = """
            select v.trainee_id, p.printed_name, greatest(t.ended_at, v.newest) as since, v.records,
                exists (select 1
                        from record_hold h
                        where h.tenant_id = :tenant
                          and h.trainee_id = v.trainee_id
                          and h.ended_at is null) as held
            from (select trainee_id, max(signed_at) as newest, count(*) as records
                  from signed_sheet
                  where tenant_id = :tenant
                    and programme_id = :programme
                  group by trainee_id) v
            join (select person_id, max(coalesce(ended_at, 'infinity')) as ended_at
                  from programme_role
                  where tenant_id = :tenant
                    and programme_id = :programme
                    and role = 'TRAINEE'
                  group by person_id) t on t.person_id = v.trainee_id
            join person p on p.tenant_id = :tenant and p.id = v.trainee_id
            where greatest(t.ended_at, v.newest) <= :before
            order by since, v.trainee_id
            """;
    private static final String FILES = """
            select q.id, q.programme_id, q.trainee_id, p.printed_name, q.reason, q.asked_by, q.asked_name, q.asked_at,
                r.id as removal_id, r.removed_by, r.removed_name, r.removed_at, r.records
            from removal_request q
            join person p on p.tenant_id = q.tenant_id and p.id = q.trainee_id
            left join record_removal r on r.tenant_id = q.tenant_id and r.request_id = q.id
            where q.tenant_id = :tenant
              and q.%s = :id
            order by q.asked_at desc, q.id
            """;
    private static final String OF_PROGRAMME = FILES.formatted("programme_id");
    private static final String FIND = FILES.formatted("id");
    private static final String LOCK = """
            select pg_advisory_xact_lock(hashtextextended('removal ' || :programme, 0))
            """;
    private static final String ASK = """
            insert into removal_request (
                tenant_id, id, programme_id, trainee_id, reason, asked_by, asked_name, asked_role, asked_at,
                credential, assertion_hash)
            values (:tenant, :id, :programme, :trainee, :reason, :by, :name, :role, :at, :credential, :assertion)
            """;
    private static final String TOMBSTONE = """
            insert into record_removal (
                tenant_id, id, request_id, asked_name, removed_by, removed_name, removed_role, removed_at,
                record_years, records, credential, assertion_hash)
            values (
                :tenant, :id, :request, :asked, :by, :name, :role, :at,
                :years, :records, :credential, :assertion)
            """;
    private static final String LIST = """
            insert into removed_record (tenant_id, removal_id, kind, record_id, content_hash)
            select :tenant, :id, e.kind, e.record_id, e.content_hash
            from evidence_of_trainee(:programme, :trainee) e
            """;
    private static final String REMOVE = """
            select remove_records(:id)
            """;

    private final JdbcClient jdbc;

    RemovalStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Who says it, in which role, when, and what they were recognised by. */
    record Said(UUID id, SignedIn who, Role role, Instant at, CredentialUsed used) {}

    /** Trainees whose training ended, and whose newest record was signed, before an instant. */
    List<EndedTerm> ended(UUID programme, Instant before) {
        return sql(ENDED)
                .param("programme", programme)
                .param("before", before.atOffset(ZoneOffset.UTC))
                .query((row, n) -> new EndedTerm(
                        row.getObject("trainee_id", UUID.class),
                        row.getString("printed_name"),
                        instant(row, "since"),
                        row.getInt("records"),
                        row.getBoolean("held")))
                .list();
    }

    List<RemovalFile> files(UUID programme) {
        return sql(OF_PROGRAMME)
                .param("id", programme)
                .query((row, n) -> file(row))
                .list();
    }

    Optional<RemovalFile> file(UUID request) {
        return sql(FIND).param("id", request).query((row, n) -> file(row)).optional();
    }

    /** One request or removal of a programme at a time. */
    void lock(UUID programme) {
        jdbc.sql(LOCK)
                .param("programme", programme.toString())
                .query((row, n) -> true)
                .single();
    }

    void ask(UUID programme, UUID trainee, String reason, Said said) {
        said(ASK, said)
                .param("programme", programme)
                .param("trainee", trainee)
                .param("reason", reason)
                .update();
    }

    /** The tombstone, and everything it stands for. */
    void tombstone(RemovalFile file, int records, int years, Said said) {
        said(TOMBSTONE, said)
                .param("request", file.request())
                .param("asked", file.askedName())
                .param("years", years)
                .param("records", records)
                .update();
        sql(LIST)
                .param("id", said.id())
                .param("programme", file.programme())
                .param("trainee", file.trainee())
                .update();
    }

    /** Removes what a tombstone lists; the database looks for itself whether it may. */
    void remove(UUID tombstone) {
        jdbc.sql(REMOVE).param("id", tombstone).query(Integer.class).single();
    }

    private StatementSpec said(String sql, Said said) {
        return sql(sql).param("id", said.id())
                .param("by", said.who().personId())
                .param("name", said.who().printedName())
                .param("role", said.role().name())
                .param("at", said.at().atOffset(ZoneOffset.UTC))
                .param("credential", said.used().kind().name())
                .param("assertion", said.used().assertionHash());
    }

    private static RemovalFile file(ResultSet row) throws SQLException {
        return new RemovalFile(
                row.getObject("id", UUID.class),
                row.getObject("programme_id", UUID.class),
                row.getObject("trainee_id", UUID.class),
                row.getString("printed_name"),
                row.getString("reason"),
                row.getObject("asked_by", UUID.class),
                row.getString("asked_name"),
                instant(row, "asked_at"),
                removed(row));
    }

    private static RemovalFile.@Nullable Removed removed(ResultSet row) throws SQLException {
        UUID id = row.getObject("removal_id", UUID.class);
        return id == null
                ? null
                : new RemovalFile.Removed(
                        id,
                        row.getObject("removed_by", UUID.class),
                        row.getString("removed_name"),
                        instant(row, "removed_at"),
                        row.getInt("records"));
    }

    private static Instant instant(ResultSet row, String column) throws SQLException {
        return row.getObject(column, OffsetDateTime.class).toInstant();
    }

    private StatementSpec sql(String text) {
        return jdbc.sql(text).param("tenant", TenantScope.require());
    }
}
