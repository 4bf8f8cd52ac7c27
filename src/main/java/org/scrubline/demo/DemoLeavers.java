package org.scrubline.demo;

import java.time.Instant;
import org.scrubline.demo.plan.DemoCast;
import org.scrubline.demo.plan.DemoPlan;
import org.scrubline.people.Roles;
import org.scrubline.platform.Role;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;

/** Ends the roles of those who leave before the plan ends: trainees who finish and the supervisor who moves on. */
@Component
@Profile("demo")
class DemoLeavers {

    /** Long enough for the last sheets to be signed, read and contested. */
    private static final int DAYS_AFTER = 60;

    private final Roles roles;

    DemoLeavers(Roles roles) {
        this.roles = roles;
    }

    void plan(Cast cast, DemoPlan plan, Timeline timeline) {
        for (DemoCast.Trainee trainee : DemoCast.TRAINEES) {
            int last = trainee.lastMonth();
            if (last < DemoCast.MONTHS) {
                timeline.at(
                        after(plan, last),
                        () -> end(cast, trainee.username(), Role.TRAINEE, "Training in the programme finished."));
            }
        }
        String leaving = DemoCast.supervisor(DemoCast.LEAVING).username();
        timeline.at(
                after(plan, DemoCast.LEAVING_MONTH),
                () -> end(cast, leaving, Role.SUPERVISOR, "Moved to a hospital outside the region."));
    }

    private void end(Cast cast, String username, Role role, String reason) {
        roles.end(cast.programme().id(), cast.member(username).personId(), role, reason)
                .orThrow();
    }

    private static Instant after(DemoPlan plan, int month) {
        return plan.begin()
                .plusMonths(month)
                .plusDays(DAYS_AFTER)
                .atStartOfDay(DemoCast.ZONE)
                .toInstant();
    }
}
