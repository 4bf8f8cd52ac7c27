package org.scrubline.casework;

import java.time.ZoneOffset;
import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Which signed sheets are open again, for whom and why. */
@Repository
class VersionDraftStore {

    private static final String MOVE = """
            update score_sheet
            set state = :to,
                lock_version = lock_version + 1
            where tenant_id = :tenant
              and id = :sheet
              and state = :from
            """;
    private static final String INSERT = """
            insert into version_draft (tenant_id, sheet_id, version_no, editor_id, reason, opened_at, counted_part)
            values (:tenant, :sheet, :version, :editor, :reason, :at, :part)
            """;
    private static final String DELETE = """
            delete from version_draft
            where tenant_id = :tenant
              and sheet_id = :sheet
            """;

    private final JdbcClient jdbc;

    VersionDraftStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** False when the sheet was in another state. */
    boolean move(UUID sheet, SheetState from, SheetState to) {
        return on(MOVE, sheet).param("from", from.name()).param("to", to.name()).update() == 1;
    }

    void insert(UUID sheet, Reopening reopening, Part counted) {
        on(INSERT, sheet)
                .param("version", reopening.versionNo())
                .param("editor", reopening.editorId())
                .param("reason", reopening.reason())
                .param("at", reopening.openedAt().atOffset(ZoneOffset.UTC))
                .param("part", counted.name())
                .update();
    }

    void delete(UUID sheet) {
        on(DELETE, sheet).update();
    }

    private JdbcClient.StatementSpec on(String sql, UUID sheet) {
        return jdbc.sql(sql).param("tenant", TenantScope.require()).param("sheet", sheet);
    }
}
