package org.scrubline.notice;

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

/** Notices: one a sheet and stage. */
@Repository
class NoticeStore {

    private static final String INSERT = """
            insert into notice (tenant_id, id, sheet_id, stage, person_id, made_at)
            values (:tenant, :id, :sheet, :stage, :person, :at)
            on conflict (tenant_id, sheet_id, stage) do nothing
            """;
    private static final String OF_PERSON = """
            select sheet_id, stage
            from notice
            where tenant_id = :tenant
              and person_id = :person
            """;
    private static final String UNMAILED = OF_PERSON + """
              and mailed_at is null
            """;
    private static final String MARK = """
            update notice
            set mailed_at = :at
            where tenant_id = :tenant
              and person_id = :person
              and sheet_id = :sheet
              and stage = :stage
            """;

    private final JdbcClient jdbc;

    NoticeStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** A reminder of one sheet. */
    record Notice(UUID sheetId, Stage stage) {}

    /** Does nothing when the sheet was reminded of at this stage before, whoever was. */
    void insert(Notice notice, UUID person, Instant at) {
        jdbc.sql(INSERT)
                .param("tenant", TenantScope.require())
                .param("id", UUID.randomUUID())
                .param("sheet", notice.sheetId())
                .param("stage", notice.stage().name())
                .param("person", person)
                .param("at", at.atOffset(ZoneOffset.UTC))
                .update();
    }

    List<Notice> of(UUID person) {
        return list(OF_PERSON, person);
    }

    /** Those that went out in no digest. */
    List<Notice> unmailed(UUID person) {
        return list(UNMAILED, person);
    }

    /** Notes when a notice went out; null takes it back. */
    void mark(UUID person, Notice notice, @Nullable Instant at) {
        @Nullable OffsetDateTime when = at == null ? null : at.atOffset(ZoneOffset.UTC);
        jdbc.sql(MARK)
                .param("tenant", TenantScope.require())
                .param("person", person)
                .param("sheet", notice.sheetId())
                .param("stage", notice.stage().name())
                .param("at", when)
                .update();
    }

    private List<Notice> list(String sql, UUID person) {
        return jdbc.sql(sql)
                .param("tenant", TenantScope.require())
                .param("person", person)
                .query((row, n) -> notice(row))
                .list();
    }

    private static Notice notice(ResultSet row) throws SQLException {
        return new Notice(row.getObject("sheet_id", UUID.class), Stage.valueOf(row.getString("stage")));
    }
}
