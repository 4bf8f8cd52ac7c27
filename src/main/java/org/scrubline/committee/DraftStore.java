package org.scrubline.committee;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.core.simple.JdbcClient.StatementSpec;
import org.springframework.stereotype.Repository;

/** Decisions being written, one for each frozen evidence. */
@Repository
class DraftStore {

    private static final String FIND = """
            select id, pack_id, author_id, content
            from decision_draft
            where tenant_id = :tenant
              and pack_id = :pack
            """;
    private static final String ANY = """
            select exists (
                select 1
                from decision_draft d
                join evidence_pack p on p.tenant_id = d.tenant_id and p.id = d.pack_id
                where d.tenant_id = :tenant
                  and p.meeting_id = :meeting)
            """;
    private static final String WRITE = """
            insert into decision_draft (tenant_id, id, pack_id, author_id, content, written_at)
            values (:tenant, :id, :pack, :author, :content, :at)
            on conflict (tenant_id, pack_id) do update
            set author_id = excluded.author_id, content = excluded.content, written_at = excluded.written_at
            """;
    private static final String DELETE = """
            delete from decision_draft
            where tenant_id = :tenant
              and pack_id = :pack
            """;

    private final JdbcClient jdbc;

    DraftStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** A stored draft and who wrote it. */
    record Row(UUID packId, UUID authorId, DecisionDraft draft) {}

    Optional<Row> find(UUID pack) {
        return sql(FIND).param("pack", pack).query((row, n) -> row(row)).optional();
    }

    /** Whether anything is being written for a meeting. */
    boolean any(UUID meeting) {
        return sql(ANY).param("meeting", meeting).query(Boolean.class).single();
    }

    void write(Row row, Instant at) {
        sql(WRITE)
                .param("id", UUID.randomUUID())
                .param("pack", row.packId())
                .param("author", row.authorId())
                .param("content", CanonicalJson.of(row.draft()))
                .param("at", at.atOffset(ZoneOffset.UTC))
                .update();
    }

    void delete(UUID pack) {
        sql(DELETE).param("pack", pack).update();
    }

    private static Row row(ResultSet row) throws SQLException {
        return new Row(
                row.getObject("pack_id", UUID.class),
                row.getObject("author_id", UUID.class),
                CanonicalJson.read(row.getString("content"), DecisionDraft.class));
    }

    private StatementSpec sql(String text) {
        return jdbc.sql(text).param("tenant", TenantScope.require());
    }
}
