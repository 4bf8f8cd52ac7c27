package org.scrubline.demo;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.scrubline.demo.plan.DemoCast;
import org.scrubline.demo.plan.DemoPlan;
import org.scrubline.platform.Accounts;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.TenantScope;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.ApplicationArguments;
import org.springframework.boot.ApplicationRunner;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Profile;
import org.springframework.context.event.EventListener;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Fills an empty server with the demo programme and prints how to get in. All of it is one transaction: a server killed
 * while it writes is as empty as before, and begins again at its next start.
 */
@Component
@Profile("demo")
@EnableConfigurationProperties(DemoSettings.class)
class DemoStart implements ApplicationRunner {

    private static final Logger log = LoggerFactory.getLogger(DemoStart.class);

    private final Accounts accounts;
    private final DemoHistory history;
    private final DemoToday today;
    private final DemoSettings settings;
    private final TransactionTemplate transaction;
    private final ScrublineClock clock;
    private final Environment environment;

    DemoStart(
            Accounts accounts,
            DemoHistory history,
            DemoToday today,
            DemoSettings settings,
            TransactionTemplate transaction,
            ScrublineClock clock,
            Environment environment) {
        this.accounts = accounts;
        this.history = history;
        this.today = today;
        this.settings = settings;
        this.transaction = transaction;
        this.clock = clock;
        this.environment = environment;
    }

    @Override
    public void run(ApplicationArguments arguments) {
        if (accounts.none()) {
            Instant began = clock.instant();
            log.info("Writing the demo programme");
            TenantScope.run(UUID.randomUUID(), () -> transaction.executeWithoutResult(status -> fill()));
            log.info(
                    "Demo programme written in {} s",
                    Duration.between(began, clock.instant()).toSeconds());
        }
    }

    private void fill() {
        LocalDate begin = settings.begin();
        LocalDate first = begin == null
                ? LocalDate.ofInstant(clock.instant(), DemoCast.ZONE).minusMonths(DemoCast.MONTHS)
                : begin;
        DemoPlan plan = DemoPlan.draw(settings.seed(), first, settings.scale(), history.rubrics());
        if (plan.end().isAfter(clock.instant())) {
            throw new IllegalStateException(
                    "scrubline.demo.begin must lie at least " + DemoCast.MONTHS + " months ago, but is " + first);
        }
        today.write(history.write(plan));
    }

    @EventListener
    void ready(ApplicationReadyEvent event) {
        System.out.printf("""

                  Scrubline demo: http://localhost:%s

                  Log in as          log-in name   and see
                  supervisor         brannock      cases to score, tomorrow’s list
                  trainee            hallinor      own cases, feedback and progress
                  director           delmarr       the cohort
                  committee member   quillmere     the cohort and committee meetings
                  administrator      ormandine     people and places
                  visitor, analyst   callavere, oderlake
                  Password of all: %s

                """, environment.getProperty("local.server.port", "8080"), DemoPeople.PASSWORD);
    }
}
