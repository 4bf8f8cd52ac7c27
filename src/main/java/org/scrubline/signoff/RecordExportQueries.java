package org.scrubline.signoff;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.UUID;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TenantScope;
import org.scrubline.signoff.RecordExport.Line;
import org.scrubline.signoff.RecordExport.Signature;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Reads what a table of records says; names and words come from what was signed. */
@Repository
class RecordExportQueries {

    private static final String LINES = """
            select s.id, s.sheet_id, s.version_no, s.procedure_code, s.case_ended_at, s.band, s.confirmed_part,
                s.given_supervision, s.verdict, s.late, s.content_hash,
                s.signer_name, s.signer_role, s.signed_at, s.signed_zone,
                d.reviewed #>> '{signer,meaning}' as meaning,
                d.reviewed #>> '{operation,reference}' as reference,
                d.reviewed #>> '{rubric,version}' as rubric_version,
                d.reviewed #>> '{trainee,name}' as trainee,
                exists (select 1
                        from void_decision v
                        where v.tenant_id = s.tenant_id
                          and v.sheet_id = s.sheet_id
                          and v.confirmed) as voided,
                m.contested, m.outcome, w.countersign_awaited,
                c.signer_name as second_name, c.signer_role as second_role, c.signed_at as second_at,
                c.signed_zone as second_zone, c.content::jsonb #>> '{signer,meaning}' as second_meaning,
                (select max(a.signed_at)
                 from acknowledgement a
                 where a.tenant_id = s.tenant_id
                   and a.signed_sheet_id = s.id
                   and a.event = 'ACKNOWLEDGED') as acknowledged_at
            from signed_sheet s
            %s
            cross join lateral (select s.content::jsonb -> 'reviewed' as reviewed) d
            left join countersignature c on c.tenant_id = s.tenant_id
                and c.signed_sheet_id = s.id
                and c.event = 'COUNTERSIGNED'
            where s.tenant_id = :tenant
              and s.programme_id = :programme
            order by s.case_ended_at, s.sheet_id, s.version_no
            """.formatted(MarkColumns.JOIN);

    private final JdbcClient jdbc;

    RecordExportQueries(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    void each(UUID programme, Consumer<Line> line) {
        try (var lines = jdbc
                .sql(LINES)
                .param("tenant", TenantScope.require())
                .param("programme", programme)
                .param("knownAt", null)
                .query((row, n) -> line(row))
                .stream()) {
            lines.forEach(line);
        }
    }

    private static Line line(ResultSet row) throws SQLException {
        return new Line(
                row.getObject("id", UUID.class),
                row.getObject("sheet_id", UUID.class),
                row.getInt("version_no"),
                row.getString("reference"),
                row.getString("procedure_code"),
                row.getString("rubric_version"),
                instant(row, "case_ended_at"),
                row.getString("band"),
                row.getString("trainee"),
                row.getString("confirmed_part"),
                row.getString("given_supervision"),
                row.getString("verdict"),
                row.getBoolean("late"),
                new Signature(
                        row.getString("signer_name"),
                        row.getString("signer_role"),
                        row.getString("meaning"),
                        instant(row, "signed_at"),
                        ZoneId.of(row.getString("signed_zone"))),
                row.getBoolean("voided"),
                MarkColumns.read(row),
                second(row),
                row.getObject("acknowledged_at") == null ? null : instant(row, "acknowledged_at"),
                row.getString("content_hash"));
    }

    private static @Nullable Signature second(ResultSet row) throws SQLException {
        String name = row.getString("second_name");
        return name == null
                ? null
                : new Signature(
                        name,
                        row.getString("second_role"),
                        row.getString("second_meaning"),
                        instant(row, "second_at"),
                        ZoneId.of(row.getString("second_zone")));
    }

    private static Instant instant(ResultSet row, String column) throws SQLException {
        return row.getObject(column, OffsetDateTime.class).toInstant();
    }
}
