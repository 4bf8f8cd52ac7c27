package org.scrubline.demo;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.CaseChanges;
import org.scrubline.casework.CaseEntry;
import org.scrubline.casework.Cases;
import org.scrubline.casework.Eye;
import org.scrubline.casework.Part;
import org.scrubline.casework.Supervision;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.demo.plan.DemoCast;
import org.scrubline.people.VisitorRequest;
import org.scrubline.people.Visitors;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Procedures;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;

/** What waits on the day the demo begins: yesterday's cases to score, tomorrow's list, a visitor. */
@Component
@Profile("demo")
class DemoToday {

    private static final String SCORER = "S01";
    private static final List<String> WAITING = List.of("T05", "T06", "T08");
    private static final Duration ENDED_AGO = Duration.ofHours(20);
    private static final List<String> GOALS =
            List.of("Even thickness of the flap", "Tighten the sutures by the pressure");
    private static final int DAYS_OF_VISIT = 14;

    private final Cases cases;
    private final CaseChanges changes;
    private final Visitors visitors;
    private final Clock clock;

    DemoToday(Cases cases, CaseChanges changes, Visitors visitors, Clock clock) {
        this.cases = cases;
        this.changes = changes;
        this.visitors = visitors;
        this.clock = clock;
    }

    /** Works in the tenant scope of the demo organisation. */
    void write(Cast cast) {
        LocalDate today = LocalDate.ofInstant(clock.instant(), DemoCast.ZONE);
        for (int n = 0; n < WAITING.size(); n++) {
            Instant ended = clock.instant().minus(ENDED_AGO).minus(Duration.ofDays(n));
            cases.log(cast.trainee(WAITING.get(n)), entry(cast, WAITING.get(n), ended, null))
                    .orThrow();
        }
        for (int n = 0; n < GOALS.size(); n++) {
            SignedIn who = cast.trainee(WAITING.get(n));
            SurgicalCase planned = cases.log(who, entry(cast, WAITING.get(n), null, today.plusDays(1)))
                    .orThrow();
            changes.setGoal(who, planned.id(), GOALS.get(n)).orThrow();
        }
        letVisitorIn(cast, today);
    }

    private CaseEntry entry(Cast cast, String trainee, @Nullable Instant ended, @Nullable LocalDate day) {
        return new CaseEntry(
                cast.programme().id(),
                cast.trainee(trainee).personId(),
                cast.supervisor(SCORER).personId(),
                cast.site(DemoCast.supervisor(SCORER).site()).id(),
                cases.proposeReference(cast.programme().id()),
                Procedures.TRAB_FORNIX,
                Eye.RIGHT,
                Part.WHOLE_CASE,
                Supervision.SCRUBBED,
                List.of(),
                ended,
                DemoCast.ZONE,
                null,
                day);
    }

    /** A visitor with a fortnight to read one trainee's records. */
    private void letVisitorIn(Cast cast, LocalDate today) {
        VisitorRequest request = new VisitorRequest(
                cast.member("callavere").personId(),
                "Accreditation visit",
                List.of(cast.trainee("T06").personId()),
                List.of(),
                today,
                today.plusDays(DAYS_OF_VISIT - 1));
        visitors.give(cast.director(), cast.programme().id(), request).orThrow();
    }
}
