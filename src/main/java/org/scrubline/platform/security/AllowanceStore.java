package org.scrubline.platform.security;

import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** What is used up of limited things, one row a subject. */
@Repository
class AllowanceStore {

    /** One statement, so that two requests at once cannot both take the last one. */
    private static final String TAKE = """
            insert into allowance as a (subject, whole_at)
            values (:subject, cast(:next as timestamptz))
            on conflict (subject) do update
            set whole_at = greatest(a.whole_at, :now) + (cast(:next as timestamptz) - :now)
            where greatest(a.whole_at, :now) + (cast(:next as timestamptz) - :now) <= :latest
            """;

    private static final String WHOLE_AT = """
            select whole_at
            from allowance
            where subject = :subject
            """;
    private static final String FORGET = """
            delete from allowance
            where whole_at < :at
            """;

    private final JdbcClient jdbc;

    AllowanceStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * Takes one, where there is one.
     *
     * @param share of the time for each
     * @param within the whole time
     */
    boolean take(String subject, Instant now, Duration share, Duration within) {
        return jdbc.sql(TAKE)
                        .param("subject", subject)
                        .param("now", utc(now))
                        .param("next", utc(now.plus(share)))
                        .param("latest", utc(now.plus(within)))
                        .update()
                == 1;
    }

    Optional<Instant> wholeAt(String subject) {
        return jdbc.sql(WHOLE_AT)
                .param("subject", subject)
                .query(OffsetDateTime.class)
                .optional()
                .map(OffsetDateTime::toInstant);
    }

    void forget(Instant before) {
        jdbc.sql(FORGET).param("at", utc(before)).update();
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }
}
