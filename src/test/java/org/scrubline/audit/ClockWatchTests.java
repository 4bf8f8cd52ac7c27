package org.scrubline.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

/** G15: a clock that was set back is seen, said once, and forgotten when it is right again. */
@ScrublineTest
class ClockWatchTests {

    @Autowired
    TestOrganisations organisations;

    @Autowired
    ClockWatch watch;

    @Autowired
    ClockHealthIndicator health;

    @Autowired
    ScrublineClock clock;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    TestOrganisation organisation;
    Instant newest;

    @BeforeEach
    void open() {
        organisation = organisations.open();
        organisation.join("Fenna Hallinor", Role.TRAINEE);
        newest = organisation.in(() -> transaction.execute(status -> jdbc.sql("select max(entered_at) from audit_entry")
                .query(OffsetDateTime.class)
                .single()
                .toInstant()));
    }

    @Test
    void anHourBackIsAnAlarmInTheTrailAndInTheHealthOnce() {
        look(newest.minus(Duration.ofHours(1)));
        look(newest.minus(Duration.ofHours(1)));
        assertThat(alarms()).isEqualTo(1);
        assertThat(health.health().getStatus().getCode()).isEqualTo("UP");
        assertThat(health.health().getDetails().get("warning")).asString().contains("60 minutes behind");

        look(newest.plusSeconds(1));
        assertThat(health.health().getDetails()).doesNotContainKey("warning");
        look(newest.minus(Duration.ofHours(1)));
        assertThat(alarms()).as("it happened again").isEqualTo(2);
        look(newest.plusSeconds(1));
    }

    @Test
    void tenMinutesAreNone() {
        look(newest.minus(Duration.ofMinutes(10)));
        assertThat(alarms()).isZero();
        look(newest.minus(Duration.ofMinutes(10)).minusMillis(1));
        assertThat(alarms()).isEqualTo(1);
        look(newest.plusSeconds(1));
    }

    private void look(Instant at) {
        clock.at(
                at,
                () -> organisation.in(() -> {
                    watch.run();
                    return true;
                }));
    }

    private long alarms() {
        return organisation.in(() ->
                transaction.execute(status -> jdbc.sql("select count(*) from audit_entry where action = 'clock-behind'")
                        .query(Long.class)
                        .single()));
    }
}
