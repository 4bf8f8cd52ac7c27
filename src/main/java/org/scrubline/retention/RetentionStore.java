package org.scrubline.retention;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.people.Person;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Terms and holds. */
@Repository
class RetentionStore {

    private static final String TERMS = """
            select draft_days, record_years, export_days
            from retention_setting
            where tenant_id = :tenant
              and programme_id = :programme
            order by set_at desc, id desc
            limit 1
            """;
    private static final String INSERT_TERMS = """
            insert into retention_setting (
                tenant_id, id, programme_id, draft_days, record_years, export_days, set_by, set_at)
            values (:tenant, :id, :programme, :drafts, :records, :exports, :by, :at)
            """;
    /** Also those who have left: a hold is needed most when the term of their records nears its end. */
    private static final String TRAINEES = """
            select distinct p.id, p.printed_name, p.active
            from programme_role r
            join person p on p.tenant_id = r.tenant_id and p.id = r.person_id
            where r.tenant_id = :tenant
              and r.programme_id = :programme
              and r.role = 'TRAINEE'
            order by p.printed_name, p.id
            """;

    private static final String HELD = """
            select exists (
                select 1
                from record_hold
                where tenant_id = :tenant
                  and trainee_id = :trainee
                  and ended_at is null)
            """;
    private static final String HOLDS = """
            select h.id, h.programme_id, h.trainee_id, t.printed_name as trainee_name, t.active, h.reason,
                s.printed_name as set_by, h.set_at, e.printed_name as ended_by, h.ended_at
            from record_hold h
            join person t on t.tenant_id = h.tenant_id and t.id = h.trainee_id
            join person s on s.tenant_id = h.tenant_id and s.id = h.set_by
            left join person e on e.tenant_id = h.tenant_id and e.id = h.ended_by
            where h.tenant_id = :tenant
              and h.%s = :id
            order by h.set_at desc, h.id
            """;
    private static final String FIND = HOLDS.formatted("id");
    private static final String OF_PROGRAMME = HOLDS.formatted("programme_id");
    private static final String INSERT_HOLD = """
            insert into record_hold (tenant_id, id, programme_id, trainee_id, reason, set_by, set_at)
            values (:tenant, :id, :programme, :trainee, :reason, :by, :at)
            on conflict (tenant_id, programme_id, trainee_id) where ended_at is null do nothing
            """;
    private static final String END = """
            update record_hold
            set ended_at = :at,
                ended_by = :by
            where tenant_id = :tenant
              and id = :id
              and ended_at is null
            """;

    private final JdbcClient jdbc;

    RetentionStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Optional<RetentionTerms> terms(UUID programme) {
        return on(TERMS)
                .param("programme", programme)
                .query((row, n) -> new RetentionTerms(
                        row.getInt("draft_days"), row.getInt("record_years"), row.getInt("export_days")))
                .optional();
    }

    /** Gives the id of the new row. */
    UUID insert(UUID programme, RetentionTerms terms, UUID by, Instant at) {
        UUID id = UUID.randomUUID();
        on(INSERT_TERMS)
                .param("id", id)
                .param("programme", programme)
                .param("drafts", terms.draftDays())
                .param("records", terms.recordYears())
                .param("exports", terms.exportDays())
                .param("by", by)
                .param("at", utc(at))
                .update();
        return id;
    }

    /** Everyone who is or was a trainee of the programme, by name. */
    List<Person> trainees(UUID programme) {
        return on(TRAINEES)
                .param("programme", programme)
                .query((row, n) -> new Person(
                        row.getObject("id", UUID.class), row.getString("printed_name"), row.getBoolean("active")))
                .list();
    }

    boolean held(UUID trainee) {
        return on(HELD).param("trainee", trainee).query(Boolean.class).single();
    }

    Optional<RecordHold> hold(UUID id) {
        return on(FIND).param("id", id).query((row, n) -> hold(row)).optional();
    }

    List<RecordHold> holds(UUID programme) {
        return on(OF_PROGRAMME)
                .param("id", programme)
                .query((row, n) -> hold(row))
                .list();
    }

    /** False when the trainee is under a hold of this programme already. */
    boolean insertHold(UUID id, UUID programme, UUID trainee, String reason, UUID by, Instant at) {
        return on(INSERT_HOLD)
                        .param("id", id)
                        .param("programme", programme)
                        .param("trainee", trainee)
                        .param("reason", reason)
                        .param("by", by)
                        .param("at", utc(at))
                        .update()
                == 1;
    }

    /** False when it had ended before. */
    boolean end(UUID id, UUID by, Instant at) {
        return on(END).param("id", id).param("by", by).param("at", utc(at)).update() == 1;
    }

    private static RecordHold hold(ResultSet row) throws SQLException {
        OffsetDateTime ended = row.getObject("ended_at", OffsetDateTime.class);
        return new RecordHold(
                row.getObject("id", UUID.class),
                row.getObject("programme_id", UUID.class),
                new Person(
                        row.getObject("trainee_id", UUID.class),
                        row.getString("trainee_name"),
                        row.getBoolean("active")),
                row.getString("reason"),
                row.getString("set_by"),
                row.getObject("set_at", OffsetDateTime.class).toInstant(),
                row.getString("ended_by"),
                ended == null ? null : ended.toInstant());
    }

    private JdbcClient.StatementSpec on(String sql) {
        return jdbc.sql(sql).param("tenant", TenantScope.require());
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }
}
