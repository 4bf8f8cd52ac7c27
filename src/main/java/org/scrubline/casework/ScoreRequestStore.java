package org.scrubline.casework;

import java.sql.Types;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Opens blank sheets when a supervisor is asked to score, and hands untouched ones on. */
@Repository
class ScoreRequestStore {

    private static final String OPEN = """
            insert into score_sheet (
                tenant_id, id, case_id, trainee_id, scorer_id, rubric_version_id, state, opened_at, touched_at)
            values (:tenant, :id, :case, :trainee, :scorer, :rubric, 'OPEN', :at, :at)
            on conflict (tenant_id, case_id, trainee_id, scorer_id) do nothing
            """;
    private static final String RUBRIC_IN_USE = """
            select rubric_version_id
            from score_sheet
            where tenant_id = :tenant
              and case_id = :case
            order by opened_at, id
            limit 1
            """;
    private static final String ASKED = """
            select exists (
                select 1
                from score_sheet
                where tenant_id = :tenant
                  and case_id = :case
                  and trainee_id = :trainee
                  and scorer_id = :scorer)
            """;
    private static final String SETTLED = """
            select exists (
                select 1
                from score_sheet
                where tenant_id = :tenant
                  and case_id = :case
                  and state <> 'OPEN')
            """;
    private static final String HAND_ON = """
            update score_sheet
            set scorer_id = :to,
                touched_at = :at,
                removal_told_at = null
            where tenant_id = :tenant
              and id = :id
              and scorer_id = :from
              and state = 'OPEN'
              and lock_version = 0
            """;
    /** What was said on it stays, under a version of its own, so that no page of before can be sent any more. */
    private static final String HAND_OVER = """
            update score_sheet
            set scorer_id = :to,
                touched_at = :at,
                removal_told_at = null,
                lock_version = case when lock_version = 0 then 0 else lock_version + 1 end
            where tenant_id = :tenant
              and id = :id
            """;

    private static final String NOTE_HAND_ON = """
            insert into sheet_assignment (
                tenant_id, id, sheet_id, from_id, to_id, assigned_by, reason, assigned_at, answered_steps)
            values (:tenant, :id, :sheet, :from, :to, :by, :reason, :at, :answered)
            """;

    private final JdbcClient jdbc;

    ScoreRequestStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Opens a blank sheet. False when this supervisor has one about this trainee in this case. */
    boolean open(UUID sheet, UUID surgicalCase, UUID trainee, UUID scorer, UUID rubric, Instant at) {
        return jdbc.sql(OPEN)
                        .param("tenant", TenantScope.require())
                        .param("id", sheet)
                        .param("case", surgicalCase)
                        .param("trainee", trainee)
                        .param("scorer", scorer)
                        .param("rubric", rubric)
                        .param("at", utc(at))
                        .update()
                == 1;
    }

    /** The rubric version the case is scored with, once a sheet is open. */
    Optional<UUID> rubricInUse(UUID surgicalCase) {
        return jdbc.sql(RUBRIC_IN_USE)
                .param("tenant", TenantScope.require())
                .param("case", surgicalCase)
                .query(UUID.class)
                .optional();
    }

    boolean asked(UUID surgicalCase, UUID trainee, UUID scorer) {
        return jdbc.sql(ASKED)
                .param("tenant", TenantScope.require())
                .param("case", surgicalCase)
                .param("trainee", trainee)
                .param("scorer", scorer)
                .query(Boolean.class)
                .single();
    }

    /** Whether a sheet about the case is signed or void. */
    boolean settled(UUID surgicalCase) {
        return jdbc.sql(SETTLED)
                .param("tenant", TenantScope.require())
                .param("case", surgicalCase)
                .query(Boolean.class)
                .single();
    }

    /** Gives an untouched sheet another scorer. False when it was touched or given away in the meantime. */
    boolean handOn(UUID sheet, UUID from, UUID to, Instant at) {
        return jdbc.sql(HAND_ON)
                        .param("tenant", TenantScope.require())
                        .param("id", sheet)
                        .param("from", from)
                        .param("to", to)
                        .param("at", utc(at))
                        .update()
                == 1;
    }

    /** Gives a sheet, whatever is on it, another scorer; the caller holds it. */
    void handOver(UUID sheet, UUID to, Instant at) {
        jdbc.sql(HAND_OVER)
                .param("tenant", TenantScope.require())
                .param("id", sheet)
                .param("to", to)
                .param("at", utc(at))
                .update();
    }

    /** Gives the id of the note. */
    UUID noteHandOn(UUID sheet, UUID from, UUID to, UUID by, String reason, Instant at) {
        return note(sheet, from, to, by, reason, at, null);
    }

    /** The same for a sheet that changed hands with what was on it. */
    UUID noteHandOver(OpenSheets.Held held, UUID to, UUID by, String reason, Instant at) {
        return note(held.sheetId(), held.scorerId(), to, by, reason, at, held.answered());
    }

    private UUID note(UUID sheet, UUID from, UUID to, UUID by, String reason, Instant at, @Nullable Integer answered) {
        UUID id = UUID.randomUUID();
        jdbc.sql(NOTE_HAND_ON)
                .param("tenant", TenantScope.require())
                .param("id", id)
                .param("sheet", sheet)
                .param("from", from)
                .param("to", to)
                .param("by", by)
                .param("reason", reason)
                .param("at", utc(at))
                .param("answered", answered, Types.INTEGER)
                .update();
        return id;
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }
}
