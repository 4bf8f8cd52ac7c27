package org.scrubline.people;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Changes of settings, added and read. */
@Repository
class SettingStore {

    /** A key this release does not know belongs to another release and is left alone. */
    private static final String CHANGES = """
            select s.id, s.key, s.value, s.reason, p.printed_name, s.changed_at
            from programme_setting s
            join person p on p.tenant_id = s.tenant_id and p.id = s.changed_by
            where s.tenant_id = :tenant
              and s.programme_id = :programme
              and s.key in (:known)
            order by s.changed_at desc, s.id
            """;

    private static final String LOCK = """
            select pg_advisory_xact_lock(hashtextextended('settings ' || :programme, 0))
            """;
    private static final String INSERT = """
            insert into programme_setting (tenant_id, id, programme_id, key, value, reason, changed_by, changed_at)
            values (:tenant, :id, :programme, :key, :value, :reason, :by, :at)
            """;

    private final JdbcClient jdbc;

    SettingStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Newest first. */
    List<SettingChange> changes(UUID programme) {
        return jdbc.sql(CHANGES)
                .param("tenant", TenantScope.require())
                .param("programme", programme)
                .param(
                        "known",
                        Arrays.stream(SettingKey.values()).map(Enum::name).toList())
                .query((row, n) -> change(row))
                .list();
    }

    /** One change of a programme's settings at a time. */
    void lock(UUID programme) {
        jdbc.sql(LOCK)
                .param("programme", programme.toString())
                .query((row, n) -> true)
                .single();
    }

    void insert(UUID programme, UUID by, SettingChange change) {
        jdbc.sql(INSERT)
                .param("tenant", TenantScope.require())
                .param("id", change.id())
                .param("programme", programme)
                .param("key", change.key().name())
                .param("value", change.value())
                .param("reason", change.reason())
                .param("by", by)
                .param("at", change.changedAt().atOffset(ZoneOffset.UTC))
                .update();
    }

    private static SettingChange change(ResultSet row) throws SQLException {
        return new SettingChange(
                row.getObject("id", UUID.class),
                SettingKey.valueOf(row.getString("key")),
                row.getInt("value"),
                row.getString("reason"),
                row.getString("printed_name"),
                row.getObject("changed_at", OffsetDateTime.class).toInstant());
    }
}
