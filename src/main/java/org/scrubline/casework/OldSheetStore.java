package org.scrubline.casework;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Finds, marks and removes open sheets without a change. The database refuses to remove any other. */
@Repository
class OldSheetStore {

    private static final String LOCK = """
            select s.id, s.case_id, s.trainee_id, s.scorer_id, c.reference, s.opened_at, s.touched_at, s.removal_told_at
            from score_sheet s
            join surgical_case c on c.tenant_id = s.tenant_id and c.id = s.case_id
            where s.tenant_id = :tenant
              and c.programme_id = :programme
              and s.state = 'OPEN'
              and (s.touched_at <= :old or s.removal_told_at is not null)
            order by s.id
            for update of s
            """;
    private static final String TELL = """
            update score_sheet
            set removal_told_at = :at
            where tenant_id = :tenant
              and id = :sheet
            """;
    private static final String KEEP_THE_FACT = """
            insert into removed_sheet (
                tenant_id, id, case_id, trainee_id, scorer_id, opened_at, touched_at, told_at, removed_at, days)
            values (:tenant, :sheet, :case, :trainee, :scorer, :opened, :touched, :told, :at, :days)
            """;
    private static final List<String> REMOVE = List.of(
            "delete from hand_off where tenant_id = :tenant and sheet_id = :sheet",
            "delete from sheet_tap where tenant_id = :tenant and sheet_id = :sheet",
            "delete from sheet_event where tenant_id = :tenant and sheet_id = :sheet",
            "delete from sheet_measure where tenant_id = :tenant and sheet_id = :sheet",
            "delete from sheet_step where tenant_id = :tenant and sheet_id = :sheet",
            "delete from score_sheet where tenant_id = :tenant and id = :sheet and state = 'OPEN'");

    private final JdbcClient jdbc;

    OldSheetStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Open sheets of a programme not changed since an instant, or told of; nobody changes them until the end. */
    List<OldSheet> lock(UUID programme, Instant old) {
        return jdbc.sql(LOCK)
                .param("tenant", TenantScope.require())
                .param("programme", programme)
                .param("old", utc(old))
                .query((row, n) -> sheet(row))
                .list();
    }

    /** Notes when the scorer was told; null takes the notice back. */
    void tell(UUID sheet, @Nullable Instant at) {
        on(TELL, sheet).param("at", utc(at)).update();
    }

    void remove(OldSheet sheet, int days, Instant at) {
        on(KEEP_THE_FACT, sheet.id())
                .param("case", sheet.caseId())
                .param("trainee", sheet.traineeId())
                .param("scorer", sheet.scorerId())
                .param("opened", utc(sheet.openedAt()))
                .param("touched", utc(sheet.touchedAt()))
                .param("told", utc(sheet.toldAt()))
                .param("at", utc(at))
                .param("days", days)
                .update();
        REMOVE.forEach(statement -> on(statement, sheet.id()).update());
    }

    private JdbcClient.StatementSpec on(String sql, UUID sheet) {
        return jdbc.sql(sql).param("tenant", TenantScope.require()).param("sheet", sheet);
    }

    private static OldSheet sheet(ResultSet row) throws SQLException {
        OffsetDateTime told = row.getObject("removal_told_at", OffsetDateTime.class);
        return new OldSheet(
                row.getObject("id", UUID.class),
                row.getObject("case_id", UUID.class),
                row.getObject("trainee_id", UUID.class),
                row.getObject("scorer_id", UUID.class),
                row.getString("reference"),
                row.getObject("opened_at", OffsetDateTime.class).toInstant(),
                row.getObject("touched_at", OffsetDateTime.class).toInstant(),
                told == null ? null : told.toInstant());
    }

    private static @Nullable OffsetDateTime utc(@Nullable Instant at) {
        return at == null ? null : at.atOffset(ZoneOffset.UTC);
    }
}
