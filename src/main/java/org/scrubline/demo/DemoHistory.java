package org.scrubline.demo;

import java.time.Instant;
import org.scrubline.demo.plan.DemoCast;
import org.scrubline.demo.plan.DemoPlan;
import org.scrubline.demo.plan.DemoRubrics;
import org.scrubline.people.Organisations;
import org.scrubline.platform.OrganisationOpened;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.TenantScope;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;

/** Lives through a plan from its first day, in the order of time, through the services people use. */
@Component
@Profile("demo")
class DemoHistory {

    private final Organisations organisations;
    private final DemoPeople people;
    private final DemoRubricHistory rubrics;
    private final DemoCases cases;
    private final DemoCommittee committee;
    private final DemoLeavers leavers;
    private final DemoPlacements placements;
    private final DemoTraining training;
    private final DemoClips clips;
    private final ApplicationEventPublisher events;
    private final ScrublineClock clock;

    DemoHistory(
            Organisations organisations,
            DemoPeople people,
            DemoRubricHistory rubrics,
            DemoCases cases,
            DemoCommittee committee,
            DemoLeavers leavers,
            DemoPlacements placements,
            DemoTraining training,
            DemoClips clips,
            ApplicationEventPublisher events,
            ScrublineClock clock) {
        this.organisations = organisations;
        this.people = people;
        this.rubrics = rubrics;
        this.cases = cases;
        this.committee = committee;
        this.leavers = leavers;
        this.placements = placements;
        this.training = training;
        this.clips = clips;
        this.events = events;
        this.clock = clock;
    }

    DemoRubrics rubrics() {
        return rubrics.versions();
    }

    /** Works in the scope of a tenant that does not exist yet, inside the caller's transaction. */
    Cast write(DemoPlan plan) {
        Timeline timeline = new Timeline(clock);
        Instant first = plan.begin().atStartOfDay(DemoCast.ZONE).toInstant();
        Cast cast = clock.at(first, () -> open(plan, timeline));
        placements.plan(cast, plan, timeline);
        training.plan(cast, plan, timeline);
        clips.plan(cast, plan, rubrics(), timeline);
        cases.plan(cast, plan, timeline);
        committee.plan(cast, plan, timeline);
        leavers.plan(cast, plan, timeline);
        timeline.run();
        return cast;
    }

    private Cast open(DemoPlan plan, Timeline timeline) {
        organisations.openHere(DemoCast.ORGANISATION);
        Cast cast = people.join();
        rubrics.plan(cast, plan, timeline);
        events.publishEvent(new OrganisationOpened(
                TenantScope.require(), cast.member("ormandine").personId()));
        return cast;
    }
}
