package org.scrubline.demo;

import java.util.UUID;
import org.scrubline.people.Organisations;
import org.scrubline.platform.Accounts;
import org.scrubline.platform.OrganisationOpened;
import org.scrubline.platform.TenantScope;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.ApplicationArguments;
import org.springframework.boot.ApplicationRunner;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.context.annotation.Profile;
import org.springframework.context.event.EventListener;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;

/** Fills an empty server with the demo programme and prints how to get in. */
@Component
@Profile("demo")
class DemoStart implements ApplicationRunner {

    private static final Logger log = LoggerFactory.getLogger(DemoStart.class);

    private final Accounts accounts;
    private final Organisations organisations;
    private final DemoPeople people;
    private final DemoCases cases;
    private final DemoList list;
    private final DemoCommittee committee;
    private final TransactionTemplate transaction;
    private final ApplicationEventPublisher events;
    private final Environment environment;

    DemoStart(
            Accounts accounts,
            Organisations organisations,
            DemoPeople people,
            DemoCases cases,
            DemoList list,
            DemoCommittee committee,
            TransactionTemplate transaction,
            ApplicationEventPublisher events,
            Environment environment) {
        this.accounts = accounts;
        this.organisations = organisations;
        this.people = people;
        this.cases = cases;
        this.list = list;
        this.committee = committee;
        this.transaction = transaction;
        this.events = events;
        this.environment = environment;
    }

    @Override
    public void run(ApplicationArguments arguments) {
        if (accounts.none()) {
            log.info("Writing the demo programme");
            UUID tenant = organisations.open(DemoCast.ORGANISATION);
            TenantScope.run(tenant, () -> fill(tenant));
        }
    }

    private void fill(UUID tenant) {
        DemoPeople.Cast cast = people.join();
        OrganisationOpened opened =
                new OrganisationOpened(tenant, cast.member("ormandine").personId());
        transaction.executeWithoutResult(status -> events.publishEvent(opened));
        cases.write(cast);
        list.write(cast);
        committee.decide(cast);
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
