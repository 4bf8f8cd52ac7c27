package org.scrubline.demo;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.scrubline.casework.CaseChanges;
import org.scrubline.casework.CaseEntry;
import org.scrubline.casework.Cases;
import org.scrubline.casework.SelfScores;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.demo.plan.CaseStatus;
import org.scrubline.demo.plan.DemoCast;
import org.scrubline.demo.plan.DemoPlan;
import org.scrubline.demo.plan.Oddity;
import org.scrubline.demo.plan.PlannedCase;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TableStatistics;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;

/** Lets the trainees log the cases of the plan and score themselves, and hands each sheet to its supervisor. */
@Component
@Profile("demo")
class DemoCases {

    private static final Logger log = LoggerFactory.getLogger(DemoCases.class);
    private static final Duration LOGGED_AFTER = Duration.ofMinutes(10);
    private static final int TOLD_EVERY = 100;

    /** After so many cases, and each time there are twice as many, the plans of the database are made anew. */
    private static final int FIRST_CASES = 50;

    private final Cases cases;
    private final CaseChanges changes;
    private final SelfScores selfScores;
    private final DemoSheets sheets;
    private final DemoOutcomes outcomes;
    private final TableStatistics statistics;

    DemoCases(
            Cases cases,
            CaseChanges changes,
            SelfScores selfScores,
            DemoSheets sheets,
            DemoOutcomes outcomes,
            TableStatistics statistics) {
        this.statistics = statistics;
        this.cases = cases;
        this.changes = changes;
        this.selfScores = selfScores;
        this.sheets = sheets;
        this.outcomes = outcomes;
    }

    void plan(Cast cast, DemoPlan plan, Timeline timeline) {
        for (PlannedCase planned : plan.cases()) {
            timeline.at(planned.endedAt().plus(LOGGED_AFTER), () -> enter(cast, plan, planned, timeline));
        }
    }

    private void enter(Cast cast, DemoPlan plan, PlannedCase planned, Timeline timeline) {
        SignedIn trainee = cast.trainee(planned.trainee());
        if (planned.oddities().contains(Oddity.REFERENCE_TAKEN)) {
            refuse(cast, planned, plan.cases().get(planned.number() - 1).reference());
        }
        SurgicalCase logged =
                cases.log(trainee, entry(cast, planned, planned.reference())).orThrow();
        if (!planned.selfScores().isEmpty()) {
            selfScores.save(trainee, logged.id(), planned.selfScores()).orThrow();
        }
        if (planned.status() != CaseStatus.NEVER_SCORED) {
            score(cast, plan, planned, logged, timeline);
        }
        if (planned.status() != CaseStatus.VOIDED) {
            outcomes.plan(new DemoSheets.Place(cast, plan, timeline), planned, logged.id());
        }
        if (doubled(planned.number())) {
            statistics.gather();
        }
        tell(plan, planned);
    }

    /** The reference typed first is that of another case, which the server says. */
    private void refuse(Cast cast, PlannedCase planned, String taken) {
        Attempt<SurgicalCase> attempt = cases.log(cast.trainee(planned.trainee()), entry(cast, planned, taken));
        if (attempt instanceof Attempt.Done) {
            throw new IllegalStateException("the reference " + taken + " was given twice");
        }
    }

    private void score(Cast cast, DemoPlan plan, PlannedCase planned, SurgicalCase logged, Timeline timeline) {
        SignedIn trainee = cast.trainee(planned.trainee());
        DemoSheets.Place place = new DemoSheets.Place(cast, plan, timeline);
        sheets.plan(
                place,
                planned,
                0,
                cases.open(trainee, logged.id()).requests().get(0).sheetId());
        for (int i = 1; i < planned.sheets().size(); i++) {
            SignedIn second = cast.supervisor(planned.sheets().get(i).scorer());
            sheets.plan(
                    place,
                    planned,
                    i,
                    changes.askScorer(trainee, logged.id(), trainee.personId(), second.personId())
                            .orThrow());
        }
    }

    private static CaseEntry entry(Cast cast, PlannedCase planned, String reference) {
        Instant ended = planned.endedAt();
        return new CaseEntry(
                cast.programme().id(),
                cast.trainee(planned.trainee()).personId(),
                cast.supervisor(planned.scorer()).personId(),
                cast.site(planned.site()).id(),
                reference,
                planned.procedure(),
                planned.eye(),
                planned.part(),
                planned.supervision(),
                List.copyOf(planned.factors()),
                ended,
                DemoCast.ZONE,
                null,
                null);
    }

    private static boolean doubled(int number) {
        return number % FIRST_CASES == 0 && Integer.bitCount(number / FIRST_CASES) == 1;
    }

    private static void tell(DemoPlan plan, PlannedCase planned) {
        int done = planned.number() + 1;
        if (done % TOLD_EVERY == 0 || done == plan.cases().size()) {
            log.info("Demo programme: {} of {} cases", done, plan.cases().size());
        }
    }
}
