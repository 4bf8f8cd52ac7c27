package org.scrubline.casework;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.core.simple.JdbcClient.StatementSpec;
import org.springframework.stereotype.Repository;

/** Who took part in a case, who was asked to score it, and what a trainee has done so far. */
@Repository
class CaseQueries {

    private static final String PARTICIPANTS = """
            select t.trainee_id, p.printed_name, t.claimed_part, t.goal
            from case_trainee t
            join person p on p.tenant_id = t.tenant_id and p.id = t.trainee_id
            where t.tenant_id = :tenant
              and t.case_id = :case
            order by p.printed_name, p.id
            """;
    private static final String REQUESTS = """
            select s.id, s.trainee_id, t.printed_name as trainee_name, s.scorer_id, p.printed_name as scorer_name,
                   s.state, s.untouched, s.days
            from (select tenant_id, id, case_id, trainee_id, scorer_id, opened_at, state,
                         state = 'OPEN' and lock_version = 0 as untouched, cast(null as integer) as days
                  from score_sheet
                  union all
                  select tenant_id, id, case_id, trainee_id, scorer_id, opened_at, 'REMOVED', false, days
                  from removed_sheet) s
            join person t on t.tenant_id = s.tenant_id and t.id = s.trainee_id
            join person p on p.tenant_id = s.tenant_id and p.id = s.scorer_id
            where s.tenant_id = :tenant
              and s.case_id = :case
            order by s.opened_at, s.id
            """;
    private static final String PLANNED_SCORER = """
            select p.id, p.printed_name
            from surgical_case c
            join person p on p.tenant_id = c.tenant_id and p.id = c.planned_scorer_id
            where c.tenant_id = :tenant
              and c.id = :case
            """;
    private static final String SHEETS_OF_TRAINEE = """
            select s.case_id, s.id, p.printed_name, s.state
            from (select tenant_id, id, case_id, trainee_id, scorer_id, opened_at, state
                  from score_sheet
                  union all
                  select tenant_id, id, case_id, trainee_id, scorer_id, opened_at, 'REMOVED'
                  from removed_sheet) s
            join person p on p.tenant_id = s.tenant_id and p.id = s.scorer_id
            where s.tenant_id = :tenant
              and s.trainee_id = :trainee
            order by s.opened_at, s.id
            """;
    private static final String PARTS_OF_TRAINEE = """
            select case_id, claimed_part
            from case_trainee
            where tenant_id = :tenant
              and trainee_id = :trainee
            """;
    private static final String CLAIMED_PART = """
            select claimed_part
            from case_trainee
            where tenant_id = :tenant
              and case_id = :case
              and trainee_id = :trainee
            """;
    // max: of several confirmed parts the largest comes last in the alphabet, too.
    // The claim stands until a signed sheet says otherwise, and a version being written says nothing yet; a case all of
    // whose sheets are void counts no more.
    private static final String OF_OPERATED = """
            from case_trainee t
            join surgical_case c on c.tenant_id = t.tenant_id and c.id = t.case_id
            left join lateral (
                select max(coalesce(d.counted_part, s.confirmed_part))
                           filter (where s.state in ('SIGNED', 'REOPENED')) as confirmed,
                       bool_and(s.state = 'VOID') as void
                from score_sheet s
                left join version_draft d on d.tenant_id = s.tenant_id and d.sheet_id = s.id
                where s.tenant_id = t.tenant_id
                  and s.case_id = t.case_id
                  and s.trainee_id = t.trainee_id) sheets on true
            where t.tenant_id = :tenant
              and t.trainee_id = :trainee
              and c.procedure_code = :procedure
              and c.kind = 'OPERATION'
              and c.state = 'ENDED'
              and coalesce(sheets.confirmed, t.claimed_part) <> 'ASSISTED'
              and not coalesce(sheets.void, false)
            """;
    private static final String OPERATED = """
            select count(*)
            """ + OF_OPERATED;
    private static final String LAST_OPERATED = """
            select max(c.ended_at)
            """ + OF_OPERATED;

    private final JdbcClient jdbc;

    CaseQueries(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<CaseFile.Participant> participants(UUID surgicalCase) {
        return sql(PARTICIPANTS)
                .param("case", surgicalCase)
                .query((row, n) -> new CaseFile.Participant(
                        row.getObject("trainee_id", UUID.class),
                        row.getString("printed_name"),
                        Part.valueOf(row.getString("claimed_part")),
                        row.getString("goal")))
                .list();
    }

    List<CaseFile.ScoreRequest> requests(UUID surgicalCase) {
        return sql(REQUESTS)
                .param("case", surgicalCase)
                .query((row, n) -> new CaseFile.ScoreRequest(
                        row.getObject("id", UUID.class),
                        named(row, "trainee_id", "trainee_name"),
                        named(row, "scorer_id", "scorer_name"),
                        SheetState.valueOf(row.getString("state")),
                        row.getBoolean("untouched"),
                        row.getObject("days", Integer.class)))
                .list();
    }

    Optional<CaseFile.Named> plannedScorer(UUID surgicalCase) {
        return sql(PLANNED_SCORER)
                .param("case", surgicalCase)
                .query((row, n) -> named(row, "id", "printed_name"))
                .optional();
    }

    /** Sheets about a trainee by case. */
    Map<UUID, List<TraineeCase.SheetLine>> sheetsOfTrainee(UUID trainee) {
        record Line(UUID surgicalCase, TraineeCase.SheetLine sheet) {}
        return sql(SHEETS_OF_TRAINEE)
                .param("trainee", trainee)
                .query((row, n) -> new Line(
                        row.getObject("case_id", UUID.class),
                        new TraineeCase.SheetLine(
                                row.getObject("id", UUID.class),
                                row.getString("printed_name"),
                                SheetState.valueOf(row.getString("state")))))
                .stream()
                .collect(Collectors.groupingBy(
                        Line::surgicalCase, Collectors.mapping(Line::sheet, Collectors.toList())));
    }

    /** Parts a trainee claimed by case. */
    Map<UUID, Part> partsOfTrainee(UUID trainee) {
        record Line(UUID surgicalCase, Part part) {}
        return sql(PARTS_OF_TRAINEE)
                .param("trainee", trainee)
                .query((row, n) ->
                        new Line(row.getObject("case_id", UUID.class), Part.valueOf(row.getString("claimed_part"))))
                .stream()
                .collect(Collectors.toMap(Line::surgicalCase, Line::part));
    }

    Optional<Part> claimedPart(UUID surgicalCase, UUID trainee) {
        return sql(CLAIMED_PART)
                .param("case", surgicalCase)
                .param("trainee", trainee)
                .query((row, n) -> Part.valueOf(row.getString("claimed_part")))
                .optional();
    }

    int operated(UUID trainee, String procedure) {
        return sql(OPERATED)
                .param("trainee", trainee)
                .param("procedure", procedure)
                .query(Integer.class)
                .single();
    }

    Optional<Instant> lastOperated(UUID trainee, String procedure) {
        OffsetDateTime last = sql(LAST_OPERATED)
                .param("trainee", trainee)
                .param("procedure", procedure)
                .query((row, n) -> row.getObject(1, OffsetDateTime.class))
                .list()
                .get(0);
        return Optional.ofNullable(last).map(OffsetDateTime::toInstant);
    }

    private StatementSpec sql(String text) {
        return jdbc.sql(text).param("tenant", TenantScope.require());
    }

    private static CaseFile.Named named(ResultSet row, String id, String name) throws SQLException {
        return new CaseFile.Named(row.getObject(id, UUID.class), row.getString(name));
    }
}
