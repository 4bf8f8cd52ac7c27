package org.scrubline.demo;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.SheetChange;
import org.scrubline.casework.Sheets;
import org.scrubline.demo.DemoSheets.Place;
import org.scrubline.demo.plan.PlannedCase;
import org.scrubline.demo.plan.PlannedContest;
import org.scrubline.demo.plan.PlannedContest.Outcome;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.Contests;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.Signing;
import org.scrubline.signoff.Versions;
import org.scrubline.signoff.Versions.Signature;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;

/** Takes the contests of the plan from the trainee's words to the reviewer's decision and new version. */
@Component
@Profile("demo")
class DemoContests {

    private static final Duration OPENED_AFTER = Duration.ofDays(2);
    private static final Duration REPLIED_AFTER = Duration.ofDays(4);
    private static final Duration NAMED_AFTER = Duration.ofDays(6);
    private static final Duration DECIDED_AFTER = Duration.ofDays(12);
    private static final Duration NEW_VERSION_AFTER = Duration.ofDays(13);

    private final Contests contests;
    private final Versions versions;
    private final Sheets sheets;
    private final Signing signing;

    DemoContests(Contests contests, Versions versions, Sheets sheets, Signing signing) {
        this.contests = contests;
        this.versions = versions;
        this.sheets = sheets;
        this.signing = signing;
    }

    /** A statement under the password every demo account has. */
    static Signature signed(String text) {
        return Signature.byPassword(text, DemoPeople.PASSWORD);
    }

    void plan(Place place, PlannedCase planned, SignedSheet record) {
        PlannedContest contest = planned.contest();
        if (contest != null) {
            SignedIn trainee = place.cast().trainee(planned.trainee());
            place.timeline().at(record.signedAt().plus(OPENED_AFTER), () -> {
                UUID opened = contests.open(
                                trainee,
                                record.id(),
                                contest.steps(),
                                signed("I did these steps without a cue; the sheet says I was steered."))
                        .orThrow()
                        .id();
                goOn(place, planned, contest, record, opened);
            });
        }
    }

    private void goOn(Place place, PlannedCase planned, PlannedContest contest, SignedSheet record, UUID opened) {
        Instant at = record.signedAt();
        SignedIn scorer = place.cast().supervisor(planned.scorer());
        SignedIn reviewer = place.cast().supervisor(contest.reviewer());
        place.timeline()
                .at(
                        at.plus(REPLIED_AFTER),
                        () -> contests.reply(
                                        scorer,
                                        opened,
                                        signed("I remember two cues at these steps and scored them as such."))
                                .orThrow());
        if (contest.outcome() == Outcome.OPEN) {
            return;
        }
        place.timeline()
                .at(
                        at.plus(NAMED_AFTER),
                        () -> contests.nameReviewer(place.cast().director(), opened, reviewer.personId(), signed(""))
                                .orThrow());
        boolean upheld = contest.outcome() == Outcome.UPHELD;
        place.timeline()
                .at(
                        at.plus(DECIDED_AFTER),
                        () -> contests.decide(reviewer, opened, upheld, signed(reason(upheld)))
                                .orThrow());
        if (upheld) {
            place.timeline().at(at.plus(NEW_VERSION_AFTER), () -> newVersion(reviewer, planned, contest, record));
        }
    }

    private static String reason(boolean upheld) {
        return upheld
                ? "The recording shows both steps done after one cue each; a new version follows."
                : "The recording shows the corrections the scorer describes; the levels stand.";
    }

    private void newVersion(SignedIn reviewer, PlannedCase planned, PlannedContest contest, SignedSheet record) {
        UUID sheet = versions.open(reviewer, record.id(), "Levels of two steps put right after an upheld contest.")
                .orThrow();
        List<SheetChange> changes = new ArrayList<>();
        planned.reviewedSteps().forEach((code, state) -> {
            if (contest.steps().contains(code)) {
                changes.add(new SheetChange.SetStep(code, state));
            }
        });
        Sheet open = sheets.get(sheet);
        sheets.change(reviewer, sheet, open.lockVersion(), new SheetChange.All(changes))
                .orThrow();
        signing.signWithoutCredential(reviewer, sheet).orThrow();
    }
}
