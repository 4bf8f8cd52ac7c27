package org.scrubline.demo;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.SheetChange;
import org.scrubline.casework.Sheets;
import org.scrubline.demo.plan.CaseStatus;
import org.scrubline.demo.plan.DemoPlan;
import org.scrubline.demo.plan.Oddity;
import org.scrubline.demo.plan.PlannedCase;
import org.scrubline.demo.plan.PlannedSheet;
import org.scrubline.platform.Credential;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.StaleData;
import org.scrubline.signoff.LateReleases;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.Signing;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;

/** Fills and signs the sheets of the plan, each at its own time. */
@Component
@Profile("demo")
class DemoSheets {

    private static final Duration OPEN = Duration.ofDays(14);
    private static final Duration RELEASED_BEFORE = Duration.ofMinutes(30);
    private static final Duration WRITTEN_WITHIN = Duration.ofDays(2);

    private final Sheets sheets;
    private final Signing signing;
    private final LateReleases releases;
    private final DemoAnswers answers;
    private final TransactionTemplate apart;

    DemoSheets(
            Sheets sheets,
            Signing signing,
            LateReleases releases,
            DemoAnswers answers,
            PlatformTransactionManager transactions) {
        this.sheets = sheets;
        this.signing = signing;
        this.releases = releases;
        this.answers = answers;
        this.apart = new TransactionTemplate(transactions);
        this.apart.setPropagationBehavior(TransactionDefinition.PROPAGATION_NESTED);
    }

    /** Where all of it happens. */
    record Place(Cast cast, DemoPlan plan, Timeline timeline) {}

    /**
     * Plans what becomes of one sheet.
     *
     * @param nth which of the sheets of the case
     */
    void plan(Place place, PlannedCase planned, int nth, UUID sheet) {
        PlannedSheet said = planned.sheets().get(nth);
        SignedIn scorer = place.cast().supervisor(said.scorer());
        if (planned.status() == CaseStatus.SIGNED || planned.status() == CaseStatus.VOIDED) {
            if (Duration.between(planned.endedAt(), said.signedAt()).compareTo(OPEN) > 0) {
                place.timeline().at(said.signedAt().minus(RELEASED_BEFORE), () -> release(place.cast(), sheet));
            }
            place.timeline().at(said.signedAt(), () -> sign(place, planned, nth, sheet));
        } else {
            place.timeline().at(writtenAt(planned, said), () -> fill(scorer, planned, said, sheet));
        }
    }

    private static Instant writtenAt(PlannedCase planned, PlannedSheet said) {
        Instant latest = planned.endedAt().plus(WRITTEN_WITHIN);
        return said.signedAt().isBefore(latest) ? said.signedAt() : latest;
    }

    private void release(Cast cast, UUID sheet) {
        releases.release(
                        cast.director(),
                        sheet,
                        "The supervisor remembers the case well and asked for it to be opened.",
                        new Credential.Password(DemoPeople.PASSWORD))
                .orThrow();
    }

    private void sign(Place place, PlannedCase planned, int nth, UUID sheet) {
        PlannedSheet said = planned.sheets().get(nth);
        SignedIn scorer = place.cast().supervisor(said.scorer());
        fill(scorer, planned, said, sheet);
        SignedSheet signed = signing.signWithoutCredential(scorer, sheet).orThrow();
        answers.plan(place, planned, nth, signed);
    }

    private void fill(SignedIn scorer, PlannedCase planned, PlannedSheet said, UUID sheet) {
        Sheet empty = sheets.get(sheet);
        Sheet filled = sheets.change(scorer, sheet, empty.lockVersion(), change(planned, said))
                .orThrow();
        if (planned.oddities().contains(Oddity.TWO_DEVICES)) {
            conflict(scorer, filled, empty.lockVersion(), said);
        }
    }

    /** A second device of the scorer sends the strength again, on the state it knew, and is told to look first. */
    private void conflict(SignedIn scorer, Sheet filled, int known, PlannedSheet said) {
        SheetChange again = new SheetChange.SetFeedback(said.strength(), "Next time together.");
        try {
            apart.executeWithoutResult(status -> sheets.change(scorer, filled.id(), known, again));
        } catch (StaleData told) {
            sheets.change(scorer, filled.id(), filled.lockVersion(), again).orThrow();
            return;
        }
        throw new IllegalStateException("a change on an old state of sheet " + filled.id() + " was taken");
    }

    private static SheetChange change(PlannedCase planned, PlannedSheet said) {
        List<SheetChange> changes = new ArrayList<>();
        changes.add(new SheetChange.ConfirmRole(planned.part(), planned.supervision()));
        said.events()
                .forEach(event -> changes.add(
                        new SheetChange.AddEvent(event.code(), event.step(), event.reason(), event.action())));
        said.steps().forEach((code, state) -> changes.add(new SheetChange.SetStep(code, state)));
        said.measures().forEach((code, value) -> changes.add(new SheetChange.SetMeasure(code, value)));
        changes.add(new SheetChange.SetFeedback(said.strength(), said.nextStep()));
        return new SheetChange.All(changes);
    }
}
