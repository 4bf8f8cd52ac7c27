package org.scrubline.committee;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.core.simple.JdbcClient.StatementSpec;
import org.springframework.stereotype.Repository;

/** Frozen evidence, added and read. */
@Repository
class PackStore {

    private static final String COLUMNS = """
            select id, meeting_id, trainee_id, cut_off, content, content_hash, frozen_at
            from evidence_pack
            where tenant_id = :tenant
            """;
    private static final String FIND = COLUMNS + """
              and meeting_id = :meeting
              and trainee_id = :trainee
            """;
    private static final String BY_ID = COLUMNS + """
              and id = :id
            """;
    private static final String FROZEN = """
            select trainee_id, cut_off, content_hash
            from evidence_pack
            where tenant_id = :tenant
              and meeting_id = :meeting
            order by frozen_at, id
            """;
    private static final String INSERT = """
            insert into evidence_pack (
                tenant_id, id, meeting_id, trainee_id, cut_off, content, content_hash, frozen_by, frozen_at)
            values (:tenant, :id, :meeting, :trainee, :cutOff, :content, :hash, :by, :at)
            """;

    private final JdbcClient jdbc;

    PackStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Optional<Pack> find(UUID meeting, UUID trainee) {
        return sql(FIND)
                .param("meeting", meeting)
                .param("trainee", trainee)
                .query((row, n) -> pack(row))
                .optional();
    }

    Optional<Pack> byId(UUID id) {
        return sql(BY_ID).param("id", id).query((row, n) -> pack(row)).optional();
    }

    List<Packs.Frozen> frozen(UUID meeting) {
        return sql(FROZEN)
                .param("meeting", meeting)
                .query((row, n) -> new Packs.Frozen(
                        row.getObject("trainee_id", UUID.class),
                        row.getObject("cut_off", OffsetDateTime.class).toInstant(),
                        row.getString("content_hash")))
                .list();
    }

    void insert(Pack pack, UUID by) {
        sql(INSERT)
                .param("id", pack.id())
                .param("meeting", pack.meetingId())
                .param("trainee", pack.traineeId())
                .param("cutOff", pack.cutOff().atOffset(ZoneOffset.UTC))
                .param("content", pack.json())
                .param("hash", pack.hash())
                .param("by", by)
                .param("at", pack.frozenAt().atOffset(ZoneOffset.UTC))
                .update();
    }

    private static Pack pack(ResultSet row) throws SQLException {
        return new Pack(
                row.getObject("id", UUID.class),
                row.getObject("meeting_id", UUID.class),
                row.getObject("trainee_id", UUID.class),
                row.getObject("cut_off", OffsetDateTime.class).toInstant(),
                row.getString("content"),
                row.getString("content_hash"),
                row.getObject("frozen_at", OffsetDateTime.class).toInstant());
    }

    private StatementSpec sql(String text) {
        return jdbc.sql(text).param("tenant", TenantScope.require());
    }
}
