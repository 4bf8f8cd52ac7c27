package org.scrubline.casework;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Reads the ended cases of a whole programme, or only what is open of them. */
@Repository
class EndedCaseQueries {

    /** Trainees of cases all of whose sheets about them are void; and sheets nobody signed, one row each. */
    private static final String SHEETS = """
            with voided as (
                select s.case_id, s.trainee_id
                from score_sheet s
                where s.tenant_id = :tenant
                  and s.state = 'VOID'
                  and not exists (select 1
                                  from score_sheet other
                                  where other.tenant_id = s.tenant_id
                                    and other.case_id = s.case_id
                                    and other.trainee_id = s.trainee_id
                                    and other.state <> 'VOID')
                  and not exists (select 1
                                  from removed_sheet removed
                                  where removed.tenant_id = s.tenant_id
                                    and removed.case_id = s.case_id
                                    and removed.trainee_id = s.trainee_id)
            ), unsigned as (
                select case_id, trainee_id
                from score_sheet
                where tenant_id = :tenant
                  and state = 'OPEN'
                union all
                select case_id, trainee_id
                from removed_sheet
                where tenant_id = :tenant
            )
            """;

    private static final String ENDED = """
            c.tenant_id = :tenant
              and c.programme_id = :programme
              and coalesce(c.converted_to, c.procedure_code) = :procedure
              and c.ended_at is not null
            """;

    private static final String CASES = SHEETS + """
            select c.id, t.trainee_id, c.ended_at, t.claimed_part, coalesce(u.waiting, 0) as waiting
            from surgical_case c
            join case_trainee t on t.tenant_id = c.tenant_id and t.case_id = c.id
            left join (select case_id, trainee_id, count(*) as waiting
                       from unsigned
                       group by case_id, trainee_id) u on u.case_id = c.id and u.trainee_id = t.trainee_id
            where %s
              and not exists (select 1
                              from voided v
                              where v.case_id = c.id
                                and v.trainee_id = t.trainee_id)
            order by c.ended_at, c.id, t.trainee_id
            """.formatted(ENDED);

    private static final String UNSIGNED = SHEETS + """
            select u.trainee_id, c.ended_at
            from unsigned u
            join surgical_case c on c.tenant_id = :tenant and c.id = u.case_id
            where %s
            order by c.ended_at
            """.formatted(ENDED);

    private static final String LAST_OPERATED = SHEETS + """
            select t.trainee_id, max(c.ended_at) as ended_at
            from surgical_case c
            join case_trainee t on t.tenant_id = c.tenant_id and t.case_id = c.id
            where %s
              and t.claimed_part <> 'ASSISTED'
              and not exists (select 1
                              from voided v
                              where v.case_id = c.id
                                and v.trainee_id = t.trainee_id)
            group by t.trainee_id
            """.formatted(ENDED);

    private final JdbcClient jdbc;

    EndedCaseQueries(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<EndedCase> of(UUID programmeId, String procedure) {
        return ask(CASES, programmeId, procedure)
                .query((row, n) -> new EndedCase(
                        row.getObject("id", UUID.class),
                        trainee(row),
                        endedAt(row),
                        Part.valueOf(row.getString("claimed_part")),
                        row.getInt("waiting")))
                .list();
    }

    /** By trainee; without those nothing is known of. */
    Map<UUID, OpenWork> open(UUID programmeId, String procedure) {
        Map<UUID, List<Instant>> unsigned = new HashMap<>();
        ask(UNSIGNED, programmeId, procedure).query(row -> {
            unsigned.computeIfAbsent(trainee(row), id -> new ArrayList<>()).add(endedAt(row));
        });
        Map<UUID, OpenWork> open = new HashMap<>();
        unsigned.forEach((trainee, ends) -> open.put(trainee, new OpenWork(ends, null)));
        ask(LAST_OPERATED, programmeId, procedure).query(row -> {
            UUID trainee = trainee(row);
            open.put(trainee, new OpenWork(unsigned.getOrDefault(trainee, List.of()), endedAt(row)));
        });
        return open;
    }

    private JdbcClient.StatementSpec ask(String sql, UUID programmeId, String procedure) {
        return jdbc.sql(sql)
                .param("tenant", TenantScope.require())
                .param("programme", programmeId)
                .param("procedure", procedure);
    }

    private static UUID trainee(ResultSet row) throws SQLException {
        return row.getObject("trainee_id", UUID.class);
    }

    private static Instant endedAt(ResultSet row) throws SQLException {
        return row.getObject("ended_at", OffsetDateTime.class).toInstant();
    }
}
