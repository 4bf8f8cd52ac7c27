package org.scrubline.outcome;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.Part;
import org.scrubline.platform.TenantScope;
import org.scrubline.rubric.Band;
import org.springframework.jdbc.core.RowCallbackHandler;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Which cases of a programme have an outcome to know, with their trainees. */
@Repository
class OutcomeCaseQueries {

    private static final String TRAINEES = """
            select trainee_id
            from case_trainee
            where tenant_id = :tenant
              and case_id = :case
            order by trainee_id
            """;
    // As with the cases a trainee operated: the claim stands until a signed sheet says otherwise, and of several
    // confirmed
    // parts the largest comes last in the alphabet.
    private static final String CASES = """
            select c.id, c.programme_id, c.reference, coalesce(c.converted_to, c.procedure_code) as performed, c.band,
                c.ended_at, c.ended_zone, t.trainee_id, p.printed_name,
                coalesce(sheets.confirmed, t.claimed_part) as part
            from surgical_case c
            join case_trainee t on t.tenant_id = c.tenant_id and t.case_id = c.id
            join person p on p.tenant_id = t.tenant_id and p.id = t.trainee_id
            left join (
                select s.case_id, s.trainee_id, bool_and(s.state = 'VOID') as void,
                    max(coalesce(d.counted_part, s.confirmed_part))
                        filter (where s.state in ('SIGNED', 'REOPENED')) as confirmed
                from score_sheet s
                left join version_draft d on d.tenant_id = s.tenant_id and d.sheet_id = s.id
                where s.tenant_id = :tenant
                group by s.case_id, s.trainee_id) sheets on sheets.case_id = c.id and sheets.trainee_id = t.trainee_id
            where c.tenant_id = :tenant
              and c.programme_id = :programme
              and c.kind = 'OPERATION'
              and c.state = 'ENDED'
              and coalesce(c.converted_to, c.procedure_code) in (:procedures)
              and sheets.void is not true
              and (cast(:person as uuid) is null
                   or exists (select 1
                              from case_trainee mine
                              where mine.tenant_id = c.tenant_id
                                and mine.case_id = c.id
                                and mine.trainee_id = :person)
                   or exists (select 1
                              from score_sheet mine
                              where mine.tenant_id = c.tenant_id
                                and mine.case_id = c.id
                                and mine.scorer_id = :person))
            order by c.ended_at, c.id, p.printed_name, p.id
            """;

    private static final String ENDS = """
            select id, ended_at, ended_zone
            from surgical_case
            where tenant_id = :tenant
              and id = any (cast(:cases as uuid[]))
              and ended_at is not null
            """;

    private final JdbcClient jdbc;

    OutcomeCaseQueries(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<UUID> trainees(UUID caseId) {
        return jdbc.sql(TRAINEES)
                .param("tenant", TenantScope.require())
                .param("case", caseId)
                .query(UUID.class)
                .list();
    }

    /** The day of each operation by the clock of its site; without cases that have not ended. */
    Map<UUID, LocalDate> operated(Collection<UUID> cases) {
        Map<UUID, LocalDate> days = new LinkedHashMap<>();
        jdbc.sql(ENDS)
                .param("tenant", TenantScope.require())
                .param("cases", cases.stream().map(UUID::toString).collect(Collectors.joining(",", "{", "}")))
                .query((RowCallbackHandler) row -> days.put(
                        row.getObject("id", UUID.class),
                        LocalDate.ofInstant(
                                row.getObject("ended_at", OffsetDateTime.class).toInstant(),
                                ZoneId.of(row.getString("ended_zone")))));
        return days;
    }

    /**
     * Ended cases of these procedures, oldest first.
     *
     * @param person only those this person trained or was asked to score in; null for all
     */
    List<FiltrationCase> cases(UUID programme, Collection<String> procedures, @Nullable UUID person) {
        if (procedures.isEmpty()) {
            return List.of();
        }
        Map<UUID, FiltrationCase> found = new LinkedHashMap<>();
        jdbc.sql(CASES)
                .param("tenant", TenantScope.require())
                .param("programme", programme)
                .param("procedures", procedures)
                .param("person", person)
                .query((row, n) -> one(row))
                .list()
                .forEach(row -> found.merge(row.id(), row, OutcomeCaseQueries::together));
        return List.copyOf(found.values());
    }

    private static FiltrationCase one(ResultSet row) throws SQLException {
        return new FiltrationCase(
                row.getObject("id", UUID.class),
                row.getObject("programme_id", UUID.class),
                row.getString("reference"),
                row.getString("performed"),
                Band.valueOf(row.getString("band")),
                row.getObject("ended_at", OffsetDateTime.class).toInstant(),
                ZoneId.of(row.getString("ended_zone")),
                List.of(new FiltrationCase.Operator(
                        row.getObject("trainee_id", UUID.class),
                        row.getString("printed_name"),
                        Part.valueOf(row.getString("part")))));
    }

    private static FiltrationCase together(FiltrationCase one, FiltrationCase other) {
        List<FiltrationCase.Operator> operators = new ArrayList<>(one.operators());
        operators.addAll(other.operators());
        return new FiltrationCase(
                one.id(),
                one.programmeId(),
                one.reference(),
                one.procedure(),
                one.band(),
                one.endedAt(),
                one.zone(),
                operators);
    }
}
