package org.scrubline.casework;

import java.sql.Array;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TenantScope;
import org.scrubline.rubric.Band;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.core.simple.JdbcClient.StatementSpec;
import org.springframework.stereotype.Repository;

/** Cases, their complexity factors and trainees. */
@Repository
class CaseStore {

    private static final String COLUMNS = """
            select c.id, c.programme_id, c.site_id, c.reference, c.procedure_code, c.eye, c.state,
                   c.planned_supervision, c.band, c.complexity_set_late, c.ended_at, c.ended_zone,
                   c.converted_to, c.abandoned_reason, c.second_eye_of, c.logged_by, c.logged_at, c.planned_on, c.lock_version,
                   array(select f.factor_code
                         from case_complexity f
                         where f.tenant_id = c.tenant_id
                           and f.case_id = c.id
                         order by f.factor_code) as factors
            from surgical_case c
            """;
    private static final String BY_ID = COLUMNS + """
            where c.tenant_id = :tenant
              and c.id = :id
            """;
    private static final String LOCKED = BY_ID + """
            for update of c
            """;
    /** Those who only read the case go on; those who change it wait. */
    private static final String HELD = """
            select id
            from surgical_case
            where tenant_id = :tenant
              and id = :id
            for share
            """;

    private static final String BY_REFERENCE = COLUMNS + """
            where c.tenant_id = :tenant
              and c.programme_id = :programme
              and c.reference = :reference
            """;
    private static final String OF_TRAINEE = COLUMNS + """
            join case_trainee t on t.tenant_id = c.tenant_id and t.case_id = c.id
            where c.tenant_id = :tenant
              and t.trainee_id = :trainee
            order by coalesce(c.ended_at, c.logged_at) desc, c.id
            """;
    private static final String INSERT = """
            insert into surgical_case (tenant_id, id, programme_id, site_id, reference, kind, procedure_code, eye, state,
                                       planned_supervision, band, complexity_set_at, complexity_set_late,
                                       ended_at, ended_zone, second_eye_of, planned_scorer_id, logged_by, logged_at,
                                       planned_on)
            values (:tenant, :id, :programme, :site, :reference, 'OPERATION', :procedure, :eye, :state,
                    :supervision, :band, :at, :late,
                    :ended, :zone, :secondEyeOf, :scorer, :by, :at,
                    :day)
            on conflict (tenant_id, programme_id, reference) do nothing
            """;
    private static final String INSERT_FACTOR = """
            insert into case_complexity (tenant_id, case_id, factor_code)
            values (:tenant, :id, :factor)
            on conflict (tenant_id, case_id, factor_code) do nothing
            """;
    private static final String INSERT_TRAINEE = """
            insert into case_trainee (tenant_id, case_id, trainee_id, claimed_part)
            values (:tenant, :id, :trainee, :part)
            on conflict (tenant_id, case_id, trainee_id) do nothing
            """;
    private static final String START = """
            update surgical_case
            set state = 'STARTED',
                lock_version = lock_version + 1
            where tenant_id = :tenant
              and id = :id
            """;
    private static final String END = """
            update surgical_case
            set state = 'ENDED',
                ended_at = :ended,
                complexity_set_late = complexity_set_at >= :ended,
                lock_version = lock_version + 1
            where tenant_id = :tenant
              and id = :id
            """;
    private static final String ABANDON = """
            update surgical_case
            set state = 'ABANDONED',
                abandoned_reason = :reason,
                lock_version = lock_version + 1
            where tenant_id = :tenant
              and id = :id
            """;
    private static final String CONVERT = """
            update surgical_case
            set converted_to = :procedure,
                lock_version = lock_version + 1
            where tenant_id = :tenant
              and id = :id
            """;

    private static final String PLAN = """
            update surgical_case
            set planned_on = :day,
                lock_version = lock_version + 1
            where tenant_id = :tenant
              and id = :id
            """;
    private static final String SET_GOAL = """
            update case_trainee
            set goal = :goal
            where tenant_id = :tenant
              and case_id = :id
              and trainee_id = :trainee
            """;

    private final JdbcClient jdbc;

    CaseStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Optional<SurgicalCase> find(UUID id) {
        return sql(BY_ID).param("id", id).query((row, n) -> surgicalCase(row)).optional();
    }

    /** Keeps others from changing the case until the transaction ends. */
    void hold(UUID id) {
        sql(HELD).param("id", id).query(UUID.class).optional();
    }

    /** Reads the case and keeps others from changing it until the transaction ends. */
    Optional<SurgicalCase> lock(UUID id) {
        return sql(LOCKED).param("id", id).query((row, n) -> surgicalCase(row)).optional();
    }

    Optional<SurgicalCase> byReference(UUID programme, String reference) {
        return sql(BY_REFERENCE)
                .param("programme", programme)
                .param("reference", reference)
                .query((row, n) -> surgicalCase(row))
                .optional();
    }

    List<SurgicalCase> ofTrainee(UUID trainee) {
        return sql(OF_TRAINEE)
                .param("trainee", trainee)
                .query((row, n) -> surgicalCase(row))
                .list();
    }

    /**
     * Stores a case with its factors, unless the programme has one of that reference.
     *
     * @param plannedScorer who will be asked, for a planned case
     * @return false when the reference is taken
     */
    boolean insert(SurgicalCase added, @Nullable UUID plannedScorer) {
        int rows = sql(INSERT)
                .param("id", added.id())
                .param("programme", added.programmeId())
                .param("site", added.siteId())
                .param("reference", added.reference())
                .param("procedure", added.procedureCode())
                .param("eye", added.eye().name())
                .param("state", added.state().name())
                .param("supervision", added.plannedSupervision().name())
                .param("band", added.band().name())
                .param("late", added.complexitySetLate())
                .param("ended", utc(added.endedAt()))
                .param(
                        "zone",
                        added.endedZone() == null ? null : added.endedZone().getId())
                .param("secondEyeOf", added.secondEyeOf())
                .param("scorer", plannedScorer)
                .param("by", added.loggedBy())
                .param("at", utc(added.loggedAt()))
                .param("day", added.plannedOn())
                .update();
        added.factors().stream().filter(factor -> rows == 1).forEach(factor -> insertFactor(added.id(), factor));
        return rows == 1;
    }

    private void insertFactor(UUID id, String factor) {
        sql(INSERT_FACTOR).param("id", id).param("factor", factor).update();
    }

    /** False when the trainee is on the case already. */
    boolean insertTrainee(UUID id, UUID trainee, Part part) {
        return sql(INSERT_TRAINEE)
                        .param("id", id)
                        .param("trainee", trainee)
                        .param("part", part.name())
                        .update()
                == 1;
    }

    void start(UUID id) {
        sql(START).param("id", id).update();
    }

    /** The complexity of a planned case counts as late after all when it was set after the end now given. */
    void end(UUID id, Instant endedAt) {
        sql(END).param("id", id).param("ended", utc(endedAt)).update();
    }

    void abandon(UUID id, String reason) {
        sql(ABANDON).param("id", id).param("reason", reason).update();
    }

    void convert(UUID id, String procedure) {
        sql(CONVERT).param("id", id).param("procedure", procedure).update();
    }

    void plan(UUID id, LocalDate day) {
        sql(PLAN).param("id", id).param("day", day).update();
    }

    void setGoal(UUID id, UUID trainee, String goal) {
        sql(SET_GOAL)
                .param("id", id)
                .param("trainee", trainee)
                .param("goal", goal)
                .update();
    }

    private StatementSpec sql(String text) {
        return jdbc.sql(text).param("tenant", TenantScope.require());
    }

    private static @Nullable OffsetDateTime utc(@Nullable Instant at) {
        return at == null ? null : at.atOffset(ZoneOffset.UTC);
    }

    private static SurgicalCase surgicalCase(ResultSet row) throws SQLException {
        OffsetDateTime ended = row.getObject("ended_at", OffsetDateTime.class);
        String zone = row.getString("ended_zone");
        Array factors = row.getArray("factors");
        return new SurgicalCase(
                row.getObject("id", UUID.class),
                row.getObject("programme_id", UUID.class),
                row.getObject("site_id", UUID.class),
                row.getString("reference"),
                row.getString("procedure_code"),
                Eye.valueOf(row.getString("eye")),
                CaseState.valueOf(row.getString("state")),
                Supervision.valueOf(row.getString("planned_supervision")),
                Band.valueOf(row.getString("band")),
                List.of((String[]) factors.getArray()),
                row.getBoolean("complexity_set_late"),
                ended == null ? null : ended.toInstant(),
                zone == null ? null : ZoneId.of(zone),
                row.getString("converted_to"),
                row.getString("abandoned_reason"),
                row.getObject("second_eye_of", UUID.class),
                row.getObject("logged_by", UUID.class),
                row.getObject("logged_at", OffsetDateTime.class).toInstant(),
                row.getObject("planned_on", LocalDate.class),
                row.getInt("lock_version"));
    }
}
