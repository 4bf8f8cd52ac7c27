package org.scrubline.notice;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** How people want to be reminded; who never said has no row. */
@Repository
class NoticeSettingStore {

    private static final String OF_PERSON = """
            select person_id, quiet_from, quiet_until, digest_hour, mail_on, mail_address
            from notice_setting
            where tenant_id = :tenant
              and person_id = :person
            """;
    private static final String BY_MAIL = """
            select person_id
            from notice_setting
            where tenant_id = :tenant
              and mail_on
            order by person_id
            """;
    private static final String PUT = """
            insert into notice_setting (
                tenant_id, person_id, quiet_from, quiet_until, digest_hour, mail_on, mail_address)
            values (:tenant, :person, :from, :until, :hour, :on, :address)
            on conflict (tenant_id, person_id) do update
            set quiet_from = excluded.quiet_from,
                quiet_until = excluded.quiet_until,
                digest_hour = excluded.digest_hour,
                mail_on = excluded.mail_on,
                mail_address = excluded.mail_address
            """;
    private static final String CLAIM = """
            update notice_setting
            set digest_on = :day
            where tenant_id = :tenant
              and person_id = :person
              and (digest_on is null or digest_on < :day)
            """;
    private static final String GIVE_BACK = """
            update notice_setting
            set digest_on = null
            where tenant_id = :tenant
              and person_id = :person
            """;

    private final JdbcClient jdbc;

    NoticeSettingStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Optional<NoticeSettings> of(UUID person) {
        return on(OF_PERSON, person).query((row, n) -> settings(row)).optional();
    }

    /** Everyone who wants mail. */
    List<UUID> byMail() {
        return jdbc.sql(BY_MAIL)
                .param("tenant", TenantScope.require())
                .query(UUID.class)
                .list();
    }

    void put(UUID person, NoticeSettings settings) {
        on(PUT, person)
                .param("from", settings.quietFrom())
                .param("until", settings.quietUntil())
                .param("hour", settings.digestHour())
                .param("on", settings.mailOn())
                .param("address", settings.mailAddress())
                .update();
    }

    /** Takes the digest of a day for this caller alone; false when it was taken. A null day gives it back. */
    boolean claim(UUID person, @Nullable LocalDate day) {
        return day == null
                ? on(GIVE_BACK, person).update() == 1
                : on(CLAIM, person).param("day", day).update() == 1;
    }

    private JdbcClient.StatementSpec on(String sql, UUID person) {
        return jdbc.sql(sql).param("tenant", TenantScope.require()).param("person", person);
    }

    private static NoticeSettings settings(ResultSet row) throws SQLException {
        return new NoticeSettings(
                row.getObject("quiet_from", LocalTime.class),
                row.getObject("quiet_until", LocalTime.class),
                row.getInt("digest_hour"),
                row.getBoolean("mail_on"),
                row.getString("mail_address"));
    }
}
