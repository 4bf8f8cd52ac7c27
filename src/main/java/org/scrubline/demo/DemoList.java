package org.scrubline.demo;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.scrubline.casework.CaseChanges;
import org.scrubline.casework.CaseEntry;
import org.scrubline.casework.Cases;
import org.scrubline.casework.Eye;
import org.scrubline.casework.Part;
import org.scrubline.casework.Supervision;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.demo.DemoCast.Trainee;
import org.scrubline.demo.DemoPeople.Cast;
import org.scrubline.platform.SignedIn;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;

/** Two cases for the first supervisor's list of the day after the demo begins. */
@Component
@Profile("demo")
class DemoList {

    private static final List<String> GOALS =
            List.of("Even thickness of the flap", "Tighten the sutures by the pressure");

    private final Cases cases;
    private final CaseChanges changes;
    private final Clock clock;

    DemoList(Cases cases, CaseChanges changes, Clock clock) {
        this.cases = cases;
        this.changes = changes;
        this.clock = clock;
    }

    /** Works in the tenant scope of the demo organisation. */
    void write(Cast cast) {
        for (int n = 0; n < GOALS.size(); n++) {
            Trainee trainee = DemoCast.TRAINEES.get(n);
            SignedIn who = cast.member(trainee.username());
            SurgicalCase planned = cases.log(who, entry(cast, who)).orThrow();
            changes.setGoal(who, planned.id(), GOALS.get(n)).orThrow();
        }
    }

    private CaseEntry entry(Cast cast, SignedIn trainee) {
        ZoneId zone = ZoneId.of(DemoCast.ZONE);
        DemoCast.Supervisor supervisor = DemoCast.SUPERVISORS.get(0);
        return new CaseEntry(
                cast.programme().id(),
                trainee.personId(),
                cast.member(supervisor.username()).personId(),
                cast.site(supervisor.site()).id(),
                cases.proposeReference(cast.programme().id()),
                "TRAB_FORNIX",
                Eye.RIGHT,
                Part.WHOLE_CASE,
                Supervision.SCRUBBED,
                List.of(),
                null,
                zone,
                null,
                LocalDate.ofInstant(clock.instant(), zone).plusDays(1));
    }
}
