package org.scrubline.signoff;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Counts signed sheets without reading them. */
@Repository
class SignedCountQueries {

    /** The newest version of each sheet that is not void, of trainees who operated, wholly or in parts. */
    private static final String COUNTED = """
            with counted as materialized (
                select s.id, s.signed_at, s.rubric_version_id
                from signed_sheet s
                where s.tenant_id = :tenant
                  and s.programme_id = :programme
                  and s.procedure_code = :procedure
                  and s.confirmed_part <> 'ASSISTED'
                  and not exists (select 1
                                  from signed_sheet newer
                                  where newer.tenant_id = s.tenant_id
                                    and newer.sheet_id = s.sheet_id
                                    and newer.version_no > s.version_no)
                  and not exists (select 1
                                  from void_decision v
                                  where v.tenant_id = s.tenant_id
                                    and v.sheet_id = s.sheet_id
                                    and v.confirmed)
            )
            """;

    private final JdbcClient jdbc;

    SignedCountQueries(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    SignedSheets.Count count(UUID programmeId, String procedureCode, Instant after) {
        return counted("""
                        select count(*) as signed, count(*) filter (where signed_at > :after) as after
                        from counted
                        """, programmeId, procedureCode)
                .param("after", after.atOffset(ZoneOffset.UTC))
                .query((row, n) -> new SignedSheets.Count(row.getInt("signed"), row.getInt("after")))
                .single();
    }

    // Asks of each step of the rubrics for one sheet that scores it: to sort the steps of all sheets took five times as
    // long.
    SignedSheets.Scored scored(UUID programmeId, String procedureCode) {
        return counted("""
                        select (select max(signed_at) from counted) as until,
                            array(select step.step_code
                                  from (select distinct step_code
                                        from rubric_step
                                        where tenant_id = :tenant
                                          and rubric_version_id in (select rubric_version_id from counted)) step
                                  where exists (select 1
                                                from counted c
                                                join signed_step t
                                                    on t.tenant_id = :tenant
                                                    and t.signed_sheet_id = c.id
                                                    and t.step_code = step.step_code
                                                where t.state = 'SCORED')) as steps
                        """, programmeId, procedureCode)
                .query((row, n) -> {
                    OffsetDateTime until = row.getObject("until", OffsetDateTime.class);
                    return new SignedSheets.Scored(
                            until == null ? Instant.EPOCH : until.toInstant(),
                            Arrays.stream((String[]) row.getArray("steps").getArray())
                                    .sorted()
                                    .toList());
                })
                .single();
    }

    private JdbcClient.StatementSpec counted(String question, UUID programmeId, String procedureCode) {
        return jdbc.sql(COUNTED + question)
                .param("tenant", TenantScope.require())
                .param("programme", programmeId)
                .param("procedure", procedureCode);
    }
}
