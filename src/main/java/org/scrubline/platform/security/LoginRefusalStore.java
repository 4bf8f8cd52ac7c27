package org.scrubline.platform.security;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import org.scrubline.platform.RefusedLogins.Refused;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Refused log-ins, counted by hashed account name and hour so that guessing cannot fill the table. */
@Repository
class LoginRefusalStore {

    private static final String COUNT = """
            insert into login_refusal as r (subject, hour, wrong, blocked, last_at, last_address)
            values (:subject, :hour, :wrong, :blocked, :at, :address)
            on conflict (subject, hour) do update
            set wrong = r.wrong + :wrong,
                blocked = r.blocked + :blocked,
                last_at = :at,
                last_address = :address
            """;
    private static final String FORGET = """
            delete from login_refusal
            where hour < :before
            """;
    private static final String REFUSED = """
            select distinct on (subject)
                subject,
                last_at,
                last_address,
                sum(wrong) over (partition by subject) as wrong,
                sum(blocked) over (partition by subject) as blocked
            from login_refusal
            where subject in (:subjects)
              and last_at >= :since
            order by subject, last_at desc
            """;

    private final JdbcClient jdbc;

    LoginRefusalStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    void count(String subject, boolean blocked, Instant at, String address) {
        jdbc.sql(COUNT)
                .param("subject", subject)
                .param("hour", utc(at.truncatedTo(ChronoUnit.HOURS)))
                .param("wrong", blocked ? 0 : 1)
                .param("blocked", blocked ? 1 : 0)
                .param("at", utc(at))
                .param("address", address)
                .update();
    }

    void forget(Instant before) {
        jdbc.sql(FORGET).param("before", utc(before)).update();
    }

    /** Refusals by subject; {@code usernames} gives the name of each. */
    List<Refused> refused(Map<String, String> usernames, Instant since) {
        return jdbc.sql(REFUSED)
                .param("subjects", usernames.keySet())
                .param("since", utc(since))
                .query((row, n) -> refused(usernames, row))
                .list();
    }

    private static Refused refused(Map<String, String> usernames, ResultSet row) throws SQLException {
        return new Refused(
                usernames.getOrDefault(row.getString("subject"), ""),
                row.getInt("wrong"),
                row.getInt("blocked"),
                row.getObject("last_at", OffsetDateTime.class).toInstant(),
                row.getString("last_address"));
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }
}
