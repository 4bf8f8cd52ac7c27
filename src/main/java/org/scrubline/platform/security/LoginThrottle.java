package org.scrubline.platform.security;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import org.scrubline.platform.Guesses;
import org.scrubline.platform.SecretCode;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Slows guessing. After five failures in a row on one account, or fifty from one address, each further failure blocks
 * that subject for twice as long, from 15 s up to 15 min; a day without failures forgets. Never a lasting lock, which
 * a stranger could trigger.
 */
@Component
public class LoginThrottle implements Guesses {

    private static final int ACCOUNT_FREE = 5;
    private static final int ADDRESS_FREE = 50;
    private static final Duration FIRST_BLOCK = Duration.ofSeconds(15);
    private static final int DOUBLINGS = 6;
    private static final Duration FORGET = Duration.ofDays(1);

    private static final String BLOCKED = """
            select blocked_until
            from login_throttle
            where subject = :subject
              and blocked_until > :now
            """;
    private static final String COUNT = """
            insert into login_throttle as t (subject, failures, last_failure)
            values (:subject, 1, :now)
            on conflict (subject) do update
            set failures = case when t.last_failure < :forget then 1 else t.failures + 1 end,
                last_failure = :now
            returning failures
            """;
    private static final String BLOCK = """
            update login_throttle
            set blocked_until = :until
            where subject = :subject
            """;

    private static final Logger log = LoggerFactory.getLogger(LoginThrottle.class);

    private final JdbcClient jdbc;
    private final Clock clock;

    LoginThrottle(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    static String account(String username) {
        return "account:" + SecretCode.hash(username);
    }

    static String address(String remoteAddress) {
        return "address:" + SecretCode.hash(remoteAddress);
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Duration> blockedFor(String subject) {
        Instant now = clock.instant();
        return jdbc.sql(BLOCKED)
                .param("subject", subject)
                .param("now", utc(now))
                .query(OffsetDateTime.class)
                .optional()
                .map(until -> Duration.between(now, until.toInstant()));
    }

    /** In a transaction of its own: the failure must be counted even if the caller's work is rolled back. */
    @Override
    @Transactional(propagation = Propagation.REQUIRES_NEW)
    public void failed(String subject) {
        Instant now = clock.instant();
        int failures = jdbc.sql(COUNT)
                .param("subject", subject)
                .param("now", utc(now))
                .param("forget", utc(now.minus(FORGET)))
                .query(Integer.class)
                .single();
        int over = failures - (subject.startsWith("address:") ? ADDRESS_FREE : ACCOUNT_FREE);
        if (over == 0) {
            log.warn("Security note: guessing is slowed, {}", subject);
        }
        if (over >= 0) {
            Duration block = FIRST_BLOCK.multipliedBy(1L << Math.min(over, DOUBLINGS));
            jdbc.sql(BLOCK)
                    .param("until", utc(now.plus(block)))
                    .param("subject", subject)
                    .update();
        }
    }

    @Override
    @Transactional(propagation = Propagation.REQUIRES_NEW)
    public void succeeded(String subject) {
        jdbc.sql("delete from login_throttle where subject = :subject")
                .param("subject", subject)
                .update();
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }
}
