package org.scrubline.casework;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Reads the ended cases of a whole programme in one statement. */
@Repository
class EndedCaseQueries {

    /** Without cases all of whose sheets about the trainee are void. */
    private static final String ENDED = """
            select c.id, t.trainee_id, c.ended_at, t.claimed_part, coalesce(s.waiting, 0) as waiting
            from surgical_case c
            join case_trainee t on t.tenant_id = c.tenant_id and t.case_id = c.id
            left join (select case_id, trainee_id,
                           count(*) filter (where state in ('OPEN', 'REMOVED')) as waiting,
                           bool_and(state = 'VOID') as void
                       from (select case_id, trainee_id, state
                             from score_sheet
                             where tenant_id = :tenant
                             union all
                             select case_id, trainee_id, 'REMOVED'
                             from removed_sheet
                             where tenant_id = :tenant) every
                       group by case_id, trainee_id) s on s.case_id = c.id and s.trainee_id = t.trainee_id
            where c.tenant_id = :tenant
              and c.programme_id = :programme
              and coalesce(c.converted_to, c.procedure_code) = :procedure
              and c.ended_at is not null
              and s.void is not true
            order by c.ended_at, c.id, t.trainee_id
            """;

    private final JdbcClient jdbc;

    EndedCaseQueries(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<EndedCase> of(UUID programmeId, String procedure) {
        return jdbc.sql(ENDED)
                .param("tenant", TenantScope.require())
                .param("programme", programmeId)
                .param("procedure", procedure)
                .query((row, n) -> new EndedCase(
                        row.getObject("id", UUID.class),
                        row.getObject("trainee_id", UUID.class),
                        row.getObject("ended_at", OffsetDateTime.class).toInstant(),
                        Part.valueOf(row.getString("claimed_part")),
                        row.getInt("waiting")))
                .list();
    }
}
