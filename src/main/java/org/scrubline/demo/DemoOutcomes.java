package org.scrubline.demo;

import java.util.List;
import java.util.UUID;
import org.scrubline.demo.plan.DemoPlan;
import org.scrubline.demo.plan.OutcomeDraw;
import org.scrubline.demo.plan.PlannedCase;
import org.scrubline.demo.plan.PlannedOutcome;
import org.scrubline.outcome.Entering;
import org.scrubline.outcome.OutcomeEntry.Source;
import org.scrubline.outcome.Outcomes;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.RubricLibrary;
import org.scrubline.rubric.Rubrics;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;

/** Lets the office enter what the letters of the clinic say about each eye, when they have come. */
@Component
@Profile("demo")
class DemoOutcomes {

    private static final String OFFICE = "ormandine";

    private final Outcomes outcomes;
    private final Rubrics rubrics;
    private final RubricLibrary library;

    DemoOutcomes(Outcomes outcomes, Rubrics rubrics, RubricLibrary library) {
        this.outcomes = outcomes;
        this.rubrics = rubrics;
        this.library = library;
    }

    /** Plans the sittings about a case that was logged; what lies after the end of the plan has not happened yet. */
    void plan(DemoSheets.Place place, PlannedCase planned, UUID caseId) {
        if (!rubrics.current(planned.procedure()).rubric().family().judgedByOutcome()) {
            return;
        }
        DemoPlan plan = place.plan();
        SignedIn office = place.cast().member(OFFICE);
        for (PlannedOutcome sitting : new OutcomeDraw(plan.seed(), library).draw(planned)) {
            if (sitting.at().isBefore(plan.end())) {
                place.timeline().at(sitting.at(), () -> enter(office, caseId, sitting));
            }
        }
    }

    private void enter(SignedIn office, UUID caseId, PlannedOutcome sitting) {
        List<Entering> entering = sitting.contents().stream()
                .map(content -> Entering.of(content, Source.CLINIC_LETTER))
                .toList();
        outcomes.enterAll(office, caseId, entering).orThrow();
    }
}
