package org.scrubline.demo;

import java.time.Instant;
import java.util.UUID;
import org.scrubline.demo.plan.DemoCast;
import org.scrubline.demo.plan.DemoPlan;
import org.scrubline.demo.plan.DemoRubrics;
import org.scrubline.rubric.RubricLibrary;
import org.scrubline.rubric.Rubrics;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;

/** Publishes the programme's rubrics, each version on the first day of its month. */
@Component
@Profile("demo")
class DemoRubricHistory {

    private final Rubrics rubrics;
    private final DemoRubrics versions;

    DemoRubricHistory(Rubrics rubrics, RubricLibrary library) {
        this.rubrics = rubrics;
        this.versions = new DemoRubrics(library);
    }

    DemoRubrics versions() {
        return versions;
    }

    /** The first versions now, the later ones in time. */
    void plan(Cast cast, DemoPlan plan, Timeline timeline) {
        UUID publisher = cast.member("ormandine").personId();
        versions.unchanged()
                .forEach(rubric -> rubrics.publish(rubric, publisher).orThrow());
        for (DemoRubrics.Version version : versions.versions()) {
            Instant day =
                    plan.month(version.firstMonth()).atStartOfDay(DemoCast.ZONE).toInstant();
            timeline.at(day, () -> rubrics.publish(version.rubric(), publisher).orThrow());
        }
    }
}
