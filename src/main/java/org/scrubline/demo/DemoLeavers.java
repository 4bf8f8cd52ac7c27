package org.scrubline.demo;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.scrubline.casework.OpenSheets;
import org.scrubline.demo.plan.DemoCast;
import org.scrubline.demo.plan.DemoPlan;
import org.scrubline.people.Roles;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;

/** Ends the roles of those who leave before the plan ends: trainees who finish and the supervisor who moves on. */
@Component
@Profile("demo")
class DemoLeavers {

    /** Long enough for the last sheets to be signed, read and contested. */
    private static final int DAYS_AFTER = 60;

    private static final List<String> COLLEAGUES = List.of("S04", "S01", "S03");

    private final Roles roles;
    private final OpenSheets sheets;

    DemoLeavers(Roles roles, OpenSheets sheets) {
        this.roles = roles;
        this.sheets = sheets;
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
        timeline.at(after(plan, DemoCast.LEAVING_MONTH), () -> {
            end(cast, leaving, Role.SUPERVISOR, "Moved to a hospital outside the region.");
            handOver(cast);
        });
    }

    /** What the supervisor left open goes to a colleague who was there; who has a sheet about the case gets no second one. */
    private void handOver(Cast cast) {
        SignedIn administrator = cast.member("ormandine");
        UUID programme = cast.programme().id();
        UUID leaving = cast.supervisor(DemoCast.LEAVING).personId();
        for (OpenSheets.Held held : sheets.of(administrator, programme, leaving)) {
            boolean handed = COLLEAGUES.stream()
                    .map(colleague -> cast.supervisor(colleague).personId())
                    .anyMatch(colleague -> sheets.handOver(
                                    administrator,
                                    programme,
                                    held.sheetId(),
                                    colleague,
                                    "The supervisor has left the region.")
                            .fold(sheet -> true, reasons -> false));
            if (!handed) {
                throw new IllegalStateException("nobody could take the sheet " + held.sheetId());
            }
        }
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
