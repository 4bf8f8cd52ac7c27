package org.scrubline.casework;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Open sheets of a programme by scorer, and whom a sheet came from. */
@Repository
class OpenSheetQueries {

    private static final String HOLDERS = """
            select p.id, p.printed_name, count(*) as sheets,
                   exists (select 1
                           from programme_role r
                           where r.tenant_id = p.tenant_id
                             and r.person_id = p.id
                             and r.programme_id = :programme
                             and r.role = 'SUPERVISOR'
                             and r.ended_at is null) as supervises
            from score_sheet s
            join surgical_case c on c.tenant_id = s.tenant_id and c.id = s.case_id
            join person p on p.tenant_id = s.tenant_id and p.id = s.scorer_id
            where s.tenant_id = :tenant
              and c.programme_id = :programme
              and s.state = 'OPEN'
              and c.state = 'ENDED'
            group by p.tenant_id, p.id, p.printed_name
            order by supervises, p.printed_name, p.id
            """;
    private static final String HELD = """
            select s.id, s.scorer_id, s.trainee_id, t.printed_name, c.reference, c.procedure_code, c.ended_at,
                   (select count(*)
                    from sheet_step a
                    where a.tenant_id = s.tenant_id
                      and a.sheet_id = s.id) as answered
            from score_sheet s
            join surgical_case c on c.tenant_id = s.tenant_id and c.id = s.case_id
            join person t on t.tenant_id = s.tenant_id and t.id = s.trainee_id
            where s.tenant_id = :tenant
              and c.programme_id = :programme
              and s.state = 'OPEN'
              and c.state = 'ENDED'
            """;
    private static final String OF_SCORER = HELD + """
              and s.scorer_id = :scorer
            order by c.ended_at, s.id
            """;
    private static final String ONE = HELD + """
              and s.id = :sheet
            """;
    private static final String BEGUN = """
            select p.printed_name, a.answered_steps, a.assigned_at
            from sheet_assignment a
            join person p on p.tenant_id = a.tenant_id and p.id = a.from_id
            where a.tenant_id = :tenant
              and a.sheet_id = :sheet
              and a.answered_steps > 0
            order by a.assigned_at desc
            limit 1
            """;

    private final JdbcClient jdbc;

    OpenSheetQueries(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<OpenSheets.Holder> holders(UUID programme) {
        return in(HOLDERS)
                .param("programme", programme)
                .query((row, n) -> new OpenSheets.Holder(
                        row.getObject("id", UUID.class),
                        row.getString("printed_name"),
                        row.getBoolean("supervises"),
                        row.getInt("sheets")))
                .list();
    }

    List<OpenSheets.Held> of(UUID programme, UUID scorer) {
        return in(OF_SCORER)
                .param("programme", programme)
                .param("scorer", scorer)
                .query((row, n) -> held(row))
                .list();
    }

    Optional<OpenSheets.Held> one(UUID programme, UUID sheet) {
        return in(ONE).param("programme", programme)
                .param("sheet", sheet)
                .query((row, n) -> held(row))
                .optional();
    }

    Optional<OpenSheets.Begun> begun(UUID sheet) {
        return in(BEGUN)
                .param("sheet", sheet)
                .query((row, n) -> new OpenSheets.Begun(
                        row.getString("printed_name"),
                        row.getInt("answered_steps"),
                        row.getObject("assigned_at", OffsetDateTime.class).toInstant()))
                .optional();
    }

    private JdbcClient.StatementSpec in(String sql) {
        return jdbc.sql(sql).param("tenant", TenantScope.require());
    }

    private static OpenSheets.Held held(ResultSet row) throws SQLException {
        return new OpenSheets.Held(
                row.getObject("id", UUID.class),
                row.getObject("scorer_id", UUID.class),
                row.getObject("trainee_id", UUID.class),
                row.getString("printed_name"),
                row.getString("reference"),
                row.getString("procedure_code"),
                row.getObject("ended_at", OffsetDateTime.class).toInstant(),
                row.getInt("answered"));
    }
}
