package org.scrubline.casework;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TenantScope;
import org.scrubline.rubric.TakeoverReason;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Reads sheets whole. A reader may see rows of two versions; the guard of {@link SheetWriterStore} then refuses its change. */
@Repository
class SheetStore {

    private static final String HEAD = """
            select
                s.case_id,
                s.trainee_id,
                s.scorer_id,
                s.rubric_version_id,
                s.state,
                s.confirmed_part,
                s.given_supervision,
                s.strength,
                s.next_step,
                s.opened_at,
                s.first_scored_at,
                s.lock_version,
                c.programme_id,
                c.converted_to,
                d.version_no,
                d.editor_id,
                d.reason,
                d.opened_at as reopened_at
            from score_sheet s
            join surgical_case c on c.tenant_id = s.tenant_id and c.id = s.case_id
            left join version_draft d on d.tenant_id = s.tenant_id and d.sheet_id = s.id
            where s.tenant_id = :tenant
              and s.id = :sheet
            """;
    /** Steps and measures in one statement, since a sheet is read with each tap. */
    private static final String ANSWERS = """
            select step_code as code, state, level, cause, in_bulk, null as value
            from sheet_step
            where tenant_id = :tenant
              and sheet_id = :sheet
            union all
            select measure_code, null, null, null, null, value
            from sheet_measure
            where tenant_id = :tenant
              and sheet_id = :sheet
            """;

    private static final String EVENTS = """
            select id, event_code, step_code, reason, action_taken, recorded_at
            from sheet_event
            where tenant_id = :tenant
              and sheet_id = :sheet
            order by recorded_at, id
            """;
    private static final String CASE = """
            select case_id
            from score_sheet
            where tenant_id = :tenant
              and id = :sheet
            """;
    private static final String OPEN = """
            select
                s.id,
                s.case_id,
                s.rubric_version_id,
                p.printed_name,
                s.trainee_id,
                s.touched_at,
                s.removal_told_at,
                c.converted_to,
                coalesce(d.version_no, 1) as version_no,
                array(select step_code
                      from sheet_step t
                      where t.tenant_id = s.tenant_id
                        and t.sheet_id = s.id) as said
            from score_sheet s
            join surgical_case c on c.tenant_id = s.tenant_id and c.id = s.case_id
            join person p on p.tenant_id = s.tenant_id and p.id = s.trainee_id
            left join version_draft d on d.tenant_id = s.tenant_id and d.sheet_id = s.id
            where s.tenant_id = :tenant
              and ((s.state = 'OPEN' and s.scorer_id = :scorer)
                   or (s.state = 'REOPENED' and d.editor_id = :scorer))
            order by c.ended_at nulls last, s.opened_at, s.id
            """;

    private final JdbcClient jdbc;

    SheetStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** A sheet with what its case says about who may open it and which steps belong to it. */
    record Draft(Sheet sheet, UUID programmeId, boolean converted) {}

    /** A line of the list of open sheets before its case and rubric are known. */
    record OpenLine(
            UUID sheetId,
            UUID caseId,
            UUID rubricVersionId,
            UUID traineeId,
            String traineeName,
            Instant touchedAt,
            @Nullable Instant toldAt,
            int versionNo,
            boolean converted,
            Set<String> said) {}

    Optional<Draft> find(UUID id) {
        return of(HEAD, id).query((row, n) -> draft(id, row)).optional();
    }

    Optional<UUID> caseOf(UUID id) {
        return of(CASE, id).query(UUID.class).optional();
    }

    List<OpenLine> open(UUID scorer) {
        return jdbc.sql(OPEN)
                .param("tenant", TenantScope.require())
                .param("scorer", scorer)
                .query((row, n) -> new OpenLine(
                        row.getObject("id", UUID.class),
                        row.getObject("case_id", UUID.class),
                        row.getObject("rubric_version_id", UUID.class),
                        row.getObject("trainee_id", UUID.class),
                        row.getString("printed_name"),
                        requireNonNull(instant(row, "touched_at")),
                        instant(row, "removal_told_at"),
                        row.getInt("version_no"),
                        row.getString("converted_to") != null,
                        Set.copyOf(Arrays.asList((String[]) row.getArray("said").getArray()))))
                .list();
    }

    private Draft draft(UUID id, ResultSet row) throws SQLException {
        Map<String, StepState> steps = new LinkedHashMap<>();
        Set<String> inBulk = new HashSet<>();
        Map<String, BigDecimal> measures = new LinkedHashMap<>();
        of(ANSWERS, id).query(answer -> {
            String code = answer.getString("code");
            if (answer.getString("state") == null) {
                measures.put(code, SheetEditor.plain(answer.getBigDecimal("value")));
                return;
            }
            steps.put(code, state(answer));
            if (answer.getBoolean("in_bulk")) {
                inBulk.add(code);
            }
        });
        Sheet sheet = new Sheet(
                id,
                row.getObject("case_id", UUID.class),
                row.getObject("trainee_id", UUID.class),
                row.getObject("scorer_id", UUID.class),
                row.getObject("rubric_version_id", UUID.class),
                SheetState.valueOf(row.getString("state")),
                optional(Part.class, row.getString("confirmed_part")),
                optional(Supervision.class, row.getString("given_supervision")),
                steps,
                inBulk,
                measures,
                of(EVENTS, id).query((event, n) -> event(event)).list(),
                text(row.getString("strength")),
                text(row.getString("next_step")),
                requireNonNull(instant(row, "opened_at")),
                instant(row, "first_scored_at"),
                row.getInt("lock_version"),
                reopening(row));
        return new Draft(sheet, row.getObject("programme_id", UUID.class), row.getString("converted_to") != null);
    }

    private static @Nullable Reopening reopening(ResultSet row) throws SQLException {
        UUID editor = row.getObject("editor_id", UUID.class);
        return editor == null
                ? null
                : new Reopening(
                        row.getInt("version_no"),
                        editor,
                        row.getString("reason"),
                        requireNonNull(instant(row, "reopened_at")));
    }

    private static StepState state(ResultSet row) throws SQLException {
        String state = row.getString("state");
        return switch (state) {
            case "SCORED" -> new StepState.Scored(row.getInt("level"));
            case "BY_SUPERVISOR" ->
                new StepState.BySupervisor(StepState.BySupervisor.Cause.valueOf(row.getString("cause")));
            case "NOT_PART" -> new StepState.NotPart();
            case "NOT_SEEN" -> new StepState.NotSeen();
            default -> throw new IllegalStateException("a step in state " + state);
        };
    }

    private static RecordedEvent event(ResultSet row) throws SQLException {
        return new RecordedEvent(
                row.getObject("id", UUID.class),
                row.getString("event_code"),
                row.getString("step_code"),
                optional(TakeoverReason.class, row.getString("reason")),
                text(row.getString("action_taken")),
                requireNonNull(instant(row, "recorded_at")));
    }

    private JdbcClient.StatementSpec of(String sql, UUID sheet) {
        return jdbc.sql(sql).param("tenant", TenantScope.require()).param("sheet", sheet);
    }

    private static <E extends Enum<E>> @Nullable E optional(Class<E> type, @Nullable String name) {
        return name == null ? null : Enum.valueOf(type, name);
    }

    private static String text(@Nullable String stored) {
        return stored == null ? "" : stored;
    }

    private static @Nullable Instant instant(ResultSet row, String column) throws SQLException {
        OffsetDateTime at = row.getObject(column, OffsetDateTime.class);
        return at == null ? null : at.withOffsetSameInstant(ZoneOffset.UTC).toInstant();
    }
}
