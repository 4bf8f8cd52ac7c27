package org.scrubline.demo.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import org.scrubline.outcome.FollowUp;
import org.scrubline.outcome.OutcomeEntry.Content;
import org.scrubline.outcome.OutcomeEntry.NoVisit;
import org.scrubline.outcome.Visit;
import org.scrubline.rubric.RubricLibrary;

/** Rates of the invented scenario, counted over the cases of several seeds. */
class OutcomeDrawTests {

    private static final LocalDate BEGIN = LocalDate.of(2024, 9, 1);
    private static final RubricLibrary LIBRARY = RubricLibrary.shipped();
    private static final List<Eye> EYES = eyes();

    private record Eye(LocalDate operated, List<Content> contents) {}

    private static List<Eye> eyes() {
        List<Eye> eyes = new ArrayList<>();
        for (long seed = 1; seed <= 3; seed++) {
            OutcomeDraw draw = new OutcomeDraw(seed, LIBRARY);
            DemoPlan.draw(seed, BEGIN, 1, new DemoRubrics(LIBRARY)).cases().stream()
                    .filter(one ->
                            !one.trainee().equals("T11") && !one.trainee().equals("T12"))
                    .forEach(one -> eyes.add(new Eye(
                            LocalDate.ofInstant(one.endedAt(), DemoCast.ZONE),
                            draw.draw(one).stream()
                                    .flatMap(sitting -> sitting.contents().stream())
                                    .toList())));
        }
        return eyes;
    }

    @Test
    void theSameSeedDrawsTheSameEyesInTheOrderOfTime() {
        PlannedCase one =
                DemoPlan.draw(1, BEGIN, .05, new DemoRubrics(LIBRARY)).cases().get(3);
        List<PlannedOutcome> sittings = new OutcomeDraw(1, LIBRARY).draw(one);
        assertThat(sittings).isEqualTo(new OutcomeDraw(1, LIBRARY).draw(one));
        assertThat(sittings).extracting(PlannedOutcome::at).isSorted();
        assertThat(sittings.get(0).at()).isAfter(one.endedAt());
    }

    @Test
    void whatVisitsFindHasTheRatesOfTheScenario() {
        assertThat(share(visit -> visit.leakTest() == Visit.LeakTest.LEAKS)).isCloseTo(.13, within(.025));
        assertThat(share(visit -> visit.pressure().iop() <= 5)).isCloseTo(.08, within(.025));
        assertThat(share(visit -> Boolean.TRUE.equals(visit.effusion()))).isCloseTo(.06, within(.02));
        assertThat(share(visit -> visit.care().contains(Visit.Care.THEATRE))).isCloseTo(.04, within(.015));
    }

    @Test
    void lateVisitsAreMissingMoreOften() {
        assertThat(missing(FollowUp.D1)).isCloseTo(.01, within(.01));
        assertThat(missing(FollowUp.M3)).isCloseTo(.10, within(.025));
        assertThat(missing(FollowUp.M12)).isCloseTo(.24, within(.03));
        assertThat(EYES.stream().flatMap(eye -> eye.contents().stream()).filter(NoVisit.class::isInstance))
                .isNotEmpty();
    }

    private static double share(Predicate<Visit> found) {
        return (double) EYES.stream()
                        .filter(eye -> eye.contents().stream()
                                .anyMatch(content -> content instanceof Visit visit && found.test(visit)))
                        .count()
                / EYES.size();
    }

    /** No visit, whether anybody said so or not. */
    private static double missing(FollowUp window) {
        long seen = EYES.stream()
                .filter(eye -> eye.contents().stream()
                        .anyMatch(
                                content -> content instanceof Visit visit && window.takes(eye.operated(), visit.day())))
                .count();
        return 1 - (double) seen / EYES.size();
    }
}
