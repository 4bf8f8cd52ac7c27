package org.scrubline.casework;

import java.util.List;
import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Finds planned cases with their people. */
@Repository
class PlannedCaseQueries {

    private static final String PLANNED = """
            select c.id, t.trainee_id, p.printed_name as trainee_name, s.printed_name as scorer_name,
                   t.claimed_part, t.goal
            from surgical_case c
            join case_trainee t on t.tenant_id = c.tenant_id and t.case_id = c.id
            join person p on p.tenant_id = t.tenant_id and p.id = t.trainee_id
            join person s on s.tenant_id = c.tenant_id and s.id = c.planned_scorer_id
            where c.tenant_id = :tenant
              and c.state in ('PLANNED', 'STARTED')
              and %s = :person
            order by c.planned_on nulls last, p.printed_name, c.reference
            """;
    private static final String OF_SCORER = PLANNED.formatted("c.planned_scorer_id");
    private static final String OF_TRAINEE = PLANNED.formatted("t.trainee_id");

    private final JdbcClient jdbc;

    PlannedCaseQueries(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** A trainee's part before its case is known. */
    record Line(UUID caseId, UUID traineeId, String traineeName, String scorerName, Part part, String goal) {}

    List<Line> ofScorer(UUID scorer) {
        return lines(OF_SCORER, scorer);
    }

    List<Line> ofTrainee(UUID trainee) {
        return lines(OF_TRAINEE, trainee);
    }

    private List<Line> lines(String sql, UUID person) {
        return jdbc.sql(sql)
                .param("tenant", TenantScope.require())
                .param("person", person)
                .query((row, n) -> new Line(
                        row.getObject("id", UUID.class),
                        row.getObject("trainee_id", UUID.class),
                        row.getString("trainee_name"),
                        row.getString("scorer_name"),
                        Part.valueOf(row.getString("claimed_part")),
                        row.getString("goal")))
                .list();
    }
}
