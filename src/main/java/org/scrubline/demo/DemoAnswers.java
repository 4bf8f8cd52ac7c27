package org.scrubline.demo;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.scrubline.demo.DemoSheets.Place;
import org.scrubline.demo.plan.CaseStatus;
import org.scrubline.demo.plan.DemoCast;
import org.scrubline.demo.plan.DemoCast.Supervisor;
import org.scrubline.demo.plan.PlannedCase;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.RecordEvent;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.VersionSigning;
import org.scrubline.signoff.VoidGround;
import org.scrubline.signoff.Voids;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;

/** What follows a signature: a second supervisor countersigns, the trainee has read it, a few records become void. */
@Component
@Profile("demo")
class DemoAnswers {

    private static final Duration READ_AFTER = Duration.ofHours(5);
    private static final Duration COUNTERSIGNED_AFTER = Duration.ofDays(1);
    private static final Duration VOID_ASKED_AFTER = Duration.ofDays(2);
    private static final Duration VOID_DECIDED_AFTER = Duration.ofDays(3);

    /** The newest records still wait, as in any programme. */
    private static final Duration WAITING = Duration.ofDays(12);

    /** One record in so many is left unanswered. */
    private static final int UNANSWERED = 4;

    private final VersionSigning signing;
    private final Voids voids;
    private final DemoContests contests;

    DemoAnswers(VersionSigning signing, Voids voids, DemoContests contests) {
        this.signing = signing;
        this.voids = voids;
        this.contests = contests;
    }

    /** @param nth which of the sheets of the case was signed */
    void plan(Place place, PlannedCase planned, int nth, SignedSheet signed) {
        Instant at = signed.signedAt();
        if (at.isAfter(place.plan().end().minus(WAITING))) {
            return;
        }
        if (planned.number() % UNANSWERED > 0) {
            SignedIn trainee = place.cast().trainee(planned.trainee());
            place.timeline().at(at.plus(READ_AFTER), () -> say(trainee, RecordEvent.ACKNOWLEDGED, signed));
        }
        if (signed.marks().awaitingCountersignature()) {
            SignedIn second = place.cast().supervisor(second(planned, nth));
            place.timeline().at(at.plus(COUNTERSIGNED_AFTER), () -> say(second, RecordEvent.COUNTERSIGNED, signed));
        }
        if (planned.status() == CaseStatus.VOIDED) {
            voidLater(place, planned, signed);
        }
        if (nth == 0 && planned.contest() != null) {
            contests.plan(place, planned, signed);
        }
    }

    private void say(SignedIn who, RecordEvent event, SignedSheet signed) {
        signing.signWithoutCredential(who, new VersionSigning.Said(event, signed.id(), signed.contentHash(), ""))
                .orThrow();
    }

    /** The next supervisor on the list who still works here and may score this trainee. */
    private static String second(PlannedCase planned, int nth) {
        List<String> free = DemoCast.SUPERVISORS.stream()
                .map(Supervisor::id)
                .filter(id -> !id.equals(DemoCast.LEAVING))
                .filter(id -> !id.equals(planned.sheets().get(nth).scorer()))
                .filter(id -> !id.equals(DemoCast.CONFLICT_SUPERVISOR)
                        || !planned.trainee().equals(DemoCast.CONFLICT_TRAINEE))
                .toList();
        return free.get(planned.number() % free.size());
    }

    private void voidLater(Place place, PlannedCase planned, SignedSheet signed) {
        SignedIn scorer = place.cast().supervisor(planned.scorer());
        SignedIn director = place.cast().director();
        Instant at = signed.signedAt();
        place.timeline()
                .at(
                        at.plus(VOID_ASKED_AFTER),
                        () -> voids.ask(
                                        scorer,
                                        signed.id(),
                                        VoidGround.WRONG_CASE,
                                        DemoContests.signed(
                                                "I scored this on the sheet of another case of the same day."))
                                .orThrow());
        place.timeline()
                .at(
                        at.plus(VOID_DECIDED_AFTER),
                        () -> voids.decide(
                                        director,
                                        signed.id(),
                                        true,
                                        DemoContests.signed("Compared with the list of the day."))
                                .orThrow());
    }
}
