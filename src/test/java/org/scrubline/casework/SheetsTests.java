package org.scrubline.casework;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.SheetChange.AddEvent;
import org.scrubline.casework.SheetChange.All;
import org.scrubline.casework.SheetChange.ConfirmRole;
import org.scrubline.casework.SheetChange.RemoveEvent;
import org.scrubline.casework.SheetChange.SetBlankSteps;
import org.scrubline.casework.SheetChange.SetFeedback;
import org.scrubline.casework.SheetChange.SetMeasure;
import org.scrubline.casework.SheetChange.SetStep;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.StepState.BySupervisor;
import org.scrubline.casework.StepState.BySupervisor.Cause;
import org.scrubline.casework.StepState.NotPart;
import org.scrubline.casework.StepState.NotSeen;
import org.scrubline.casework.StepState.Scored;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.StaleData;
import org.scrubline.rubric.Phase;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.TakeoverReason;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;

@ScrublineTest
class SheetsTests {

    private static final Instant ENDED = Instant.parse("2026-03-12T11:40:00Z");
    private static final StepState BY_PLAN = new BySupervisor(Cause.PLAN);
    private static final StepState AFTER_TAKEOVER = new BySupervisor(Cause.AFTER_TAKEOVER);

    @Autowired
    Sheets sheets;

    @Autowired
    SheetFixture fixture;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    ScrublineClock clock;

    Theatre theatre;
    UUID id;

    @BeforeEach
    void openASheet() {
        theatre = fixture.theatre(organisations);
        id = fixture.open(theatre, Procedures.TRAB_FORNIX, ENDED);
    }

    @Test
    void aNewSheetIsBlankEverywhere() {
        Sheet sheet = read();
        assertThat(sheet.state()).isEqualTo(SheetState.OPEN);
        assertThat(sheet.steps()).isEmpty();
        assertThat(sheet.confirmedPart()).isNull();
        assertThat(sheet.firstScoredAt()).isNull();
        assertThat(sheet.lockVersion()).isZero();
    }

    @Test
    void everyKindOfChangeIsStored() {
        done(new ConfirmRole(Part.PARTS, Supervision.IN_ROOM));
        done(new SetStep("TF01", new Scored(4)));
        done(new SetStep("TF02", BY_PLAN));
        done(new SetStep("TF03", new NotPart()));
        done(new SetStep("TF04", new NotSeen()));
        done(new SetMeasure("TF02-DISTANCE", new BigDecimal("1.50")));
        done(new AddEvent("BLEEDING", "TF05", null, "Cautery, then dry."));
        done(new SetFeedback("  Calm hands. ", "Loosen the suture\r\nearlier."));
        Sheet sheet = read();
        assertThat(sheet.confirmedPart()).isEqualTo(Part.PARTS);
        assertThat(sheet.givenSupervision()).isEqualTo(Supervision.IN_ROOM);
        assertThat(sheet.step("TF01")).isEqualTo(new Scored(4));
        assertThat(sheet.step("TF02")).isEqualTo(BY_PLAN);
        assertThat(sheet.step("TF03")).isEqualTo(new NotPart());
        assertThat(sheet.step("TF04")).isEqualTo(new NotSeen());
        assertThat(sheet.step("TF05")).isEqualTo(StepState.blank());
        assertThat(sheet.measures()).containsExactly(java.util.Map.entry("TF02-DISTANCE", new BigDecimal("1.5")));
        assertThat(sheet.events()).singleElement().satisfies(event -> {
            assertThat(event.eventCode()).isEqualTo("BLEEDING");
            assertThat(event.stepCode()).isEqualTo("TF05");
            assertThat(event.actionTaken()).isEqualTo("Cautery, then dry.");
        });
        assertThat(sheet.strength()).isEqualTo("Calm hands.");
        assertThat(sheet.nextStep()).isEqualTo("Loosen the suture\nearlier.");
        assertThat(sheet.lockVersion()).isEqualTo(8);
    }

    @Test
    void whatWasSaidCanBeTakenBack() {
        done(new SetStep("TF01", new Scored(4)));
        done(new SetStep("TF01", StepState.blank()));
        done(new SetMeasure("TF02-PERFORATION", BigDecimal.ZERO));
        done(new SetMeasure("TF02-PERFORATION", null));
        done(new AddEvent("BLEEDING", null, null, ""));
        done(new RemoveEvent(read().events().get(0).id()));
        Sheet sheet = read();
        assertThat(sheet.steps()).isEmpty();
        assertThat(sheet.measures()).isEmpty();
        assertThat(sheet.events()).isEmpty();
    }

    @Test
    void theFirstLevelSetsWhenScoringBeganAndNoLaterOneMovesIt() {
        Instant first = Instant.parse("2026-03-12T12:00:00Z");
        clock.at(first, () -> done(new SetStep("TF01", new Scored(4))));
        clock.at(first.plusSeconds(60), () -> done(new SetStep("TF02", new Scored(4))));
        assertThat(read().firstScoredAt()).isEqualTo(first);
    }

    @Test
    void aStepThatWasNotScoredDoesNotSetWhenScoringBegan() {
        done(new SetStep("TF01", new NotSeen()));
        assertThat(read().firstScoredAt()).isNull();
    }

    @Test
    void theRestOfAPhaseTouchesBlankStepsOfThatPhaseOnly() {
        done(new SetStep("TF03", new Scored(3)));
        done(new SetBlankSteps(Phase.EXPOSURE, new NotSeen()));
        Sheet sheet = read();
        assertThat(sheet.step("TF03")).isEqualTo(new Scored(3));
        assertThat(sheet.step("TF04")).isEqualTo(new NotSeen());
        assertThat(sheet.step("TF01")).isEqualTo(StepState.blank());
    }

    @Test
    void allUntouchedStepsCanBeSaidAtOnce() {
        done(new SetStep("TF03", new Scored(3)));
        done(new SetBlankSteps(null, new NotSeen()));
        assertThat(read().steps())
                .hasSize(19)
                .containsEntry("TF03", new Scored(3))
                .containsEntry("TF19", new NotSeen());
    }

    @Test
    void noLevelIsSaidForManySteps() {
        assertThat(refused(new SetBlankSteps(Phase.EXPOSURE, new Scored(4))))
                .containsExactly("sheet.refusal.bulk-level");
        assertThat(refused(new SetBlankSteps(Phase.EXPOSURE, StepState.blank())))
                .containsExactly("sheet.refusal.bulk-level");
        assertThat(read().steps()).isEmpty();
    }

    @Test
    void aTakeoverSetsItsStepToOneAndTheBlankRestOfThePhaseToBySupervisor() {
        done(new SetStep("TF03", new Scored(5)));
        done(new AddEvent("TAKEOVER", "TF04", TakeoverReason.TIME, ""));
        Sheet sheet = read();
        assertThat(sheet.step("TF03")).isEqualTo(new Scored(5));
        assertThat(sheet.step("TF04")).isEqualTo(new Scored(1));
        assertThat(sheet.step("TF05")).isEqualTo(AFTER_TAKEOVER);
        assertThat(sheet.step("TF01")).as("another phase").isEqualTo(StepState.blank());
    }

    @Test
    void aTakeoverTakenBackTakesItsConsequencesWithIt() {
        done(new SetStep("TF03", new Scored(5)));
        done(new AddEvent("TAKEOVER", "TF04", TakeoverReason.TIME, ""));
        done(new RemoveEvent(read().events().get(0).id()));
        assertThat(read().steps()).containsOnlyKeys("TF03");
    }

    @Test
    void aStepTakenOverStaysAtOneWhileTheTakeoverStands() {
        done(new AddEvent("TAKEOVER", "TF04", TakeoverReason.TIME, ""));
        assertThat(refused(new SetStep("TF04", new Scored(4)))).containsExactly("sheet.refusal.taken-over");
        done(new RemoveEvent(read().events().get(0).id()));
        assertThat(done(new SetStep("TF04", new Scored(4))).step("TF04")).isEqualTo(new Scored(4));
    }

    @Test
    void afterATakeoverIsACauseOnlyWhereSomethingWasTakenOver() {
        assertThat(refused(new SetStep("TF04", AFTER_TAKEOVER))).containsExactly("sheet.refusal.no-takeover");
        done(new AddEvent("TAKEOVER", "TF03", TakeoverReason.TEACHING, ""));
        assertThat(done(new SetStep("TF04", AFTER_TAKEOVER)).step("TF04")).isEqualTo(AFTER_TAKEOVER);
    }

    @Test
    void aTakeoverNeedsAStepAndAReason() {
        assertThat(refused(new AddEvent("TAKEOVER", null, null, "")))
                .containsExactly("sheet.refusal.takeover-step", "sheet.refusal.takeover-reason");
        assertThat(refused(new AddEvent("BLEEDING", "TF04", TakeoverReason.TIME, "")))
                .containsExactly("sheet.refusal.reason-without-takeover");
    }

    @Test
    void anotherEventNeedsWords() {
        assertThat(refused(new AddEvent("OTHER", null, null, "  "))).containsExactly("sheet.refusal.event-words");
        assertThat(done(new AddEvent("OTHER", null, null, "Lamp went out.")).events())
                .hasSize(1);
    }

    @Test
    void unknownCodesAreRefused() {
        assertThat(refused(new SetStep("TF99", new Scored(4)))).containsExactly("sheet.refusal.step");
        assertThat(refused(new SetMeasure("TF01-NOTHING", BigDecimal.ONE))).containsExactly("sheet.refusal.measure");
        assertThat(refused(new AddEvent("FLOOD", null, null, ""))).containsExactly("sheet.refusal.event");
        assertThat(refused(new AddEvent("BLEEDING", "TF99", null, ""))).containsExactly("sheet.refusal.step");
        assertThat(refused(new RemoveEvent(UUID.randomUUID()))).containsExactly("sheet.refusal.event-gone");
    }

    @Test
    void measuresAreCheckedForSenseNotForTolerance() {
        assertThat(refused(new SetMeasure("TF02-DISTANCE", new BigDecimal("-0.5"))))
                .containsExactly("sheet.refusal.range");
        assertThat(refused(new SetMeasure("TF02-DISTANCE", new BigDecimal("10000"))))
                .containsExactly("sheet.refusal.range");
        assertThat(refused(new SetMeasure("TF02-DISTANCE", new BigDecimal("1.0001"))))
                .containsExactly("sheet.refusal.decimals");
        assertThat(refused(new SetMeasure("TF02-PERFORATION", new BigDecimal("1.5"))))
                .containsExactly("sheet.refusal.count");
        assertThat(refused(new SetMeasure("TF02-PERFORATION", new BigDecimal("100"))))
                .containsExactly("sheet.refusal.range");
        assertThat(refused(new SetMeasure("TF01-PAUSE", new BigDecimal("2")))).containsExactly("sheet.refusal.yes-no");
        assertThat(done(new SetMeasure("TF02-DISTANCE", new BigDecimal("9"))).measures())
                .as("far outside the tolerance, still recorded")
                .containsEntry("TF02-DISTANCE", new BigDecimal("9"));
        assertThat(done(new SetMeasure("TF01-PAUSE", BigDecimal.ONE)).measures())
                .containsKey("TF01-PAUSE");
    }

    @Test
    void textHasALengthAndNoControlCharacters() {
        assertThat(refused(new SetFeedback("x".repeat(1001), "\u0000")))
                .containsExactly("refusal.text.length", "refusal.text.characters");
        assertThat(refused(new AddEvent("BLEEDING", null, null, "x".repeat(501))))
                .containsExactly("refusal.text.length");
        assertThat(done(new SetFeedback("x".repeat(1000), "y")).strength()).hasSize(1000);
        assertThat(done(new AddEvent("BLEEDING", null, null, "x".repeat(500))).events())
                .hasSize(1);
    }

    @Test
    void severalChangesAreOneOrNone() {
        assertThat(refused(new All(List.of(
                        new SetStep("TF01", new Scored(4)),
                        new SetStep("TF99", new Scored(4)),
                        new AddEvent("FLOOD", null, null, "")))))
                .containsExactly("sheet.refusal.step", "sheet.refusal.event");
        assertThat(read().steps()).isEmpty();
        Sheet sheet = done(new All(List.of(new SetStep("TF01", new Scored(4)), new SetStep("TF02", new Scored(5)))));
        assertThat(sheet.steps()).hasSize(2);
        assertThat(sheet.lockVersion()).isEqualTo(1);
    }

    @Test
    void aChangeOnAnOldVersionIsStaleAndShowsBothVersions() {
        done(new SetStep("TF01", new Scored(4)));
        assertThatThrownBy(() -> change(0, new SetStep("TF01", new Scored(2))))
                .isInstanceOfSatisfying(StaleData.class, stale -> {
                    assertThat(stale.back()).isEqualTo("/sheets/" + id);
                    assertThat(stale.lines()).containsExactly(new StaleData.Line("Plan and ready", "2", "4"));
                });
        assertThat(read().step("TF01")).isEqualTo(new Scored(4));
    }

    @Test
    void twoWritersOnOneVersionLeaveOneStale() throws Exception {
        List<Callable<String>> writers = new ArrayList<>();
        for (int level = 1; level <= 5; level++) {
            SheetChange change = new SetStep("TF01", new Scored(level));
            writers.add(() -> outcome(() -> change(0, change)));
        }
        assertThat(together(writers)).containsOnlyOnce("done").contains("stale").hasSize(5);
        assertThat(read().lockVersion()).isEqualTo(1);
    }

    @Test
    void aTapSentTwentyTimesAtOnceIsAppliedOnce() throws Exception {
        UUID tap = UUID.randomUUID();
        List<Callable<String>> senders = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            senders.add(() -> outcome(() -> tap(tap, 0, new AddEvent("BLEEDING", "TF05", null, ""))));
        }
        assertThat(together(senders)).hasSize(20).containsOnly("done");
        assertThat(read().events()).hasSize(1);
        assertThat(read().lockVersion()).isEqualTo(1);
    }

    @Test
    void aTapSentAgainAfterAnotherPersonsChangeIsAnsweredUnderItsOwnVersion() {
        UUID tap = UUID.randomUUID();
        assertThat(tap(tap, 0, new SetStep("TF01", new Scored(4))).orThrow().lockVersion())
                .isEqualTo(1);
        done(new SetStep("TF01", new Scored(3)));
        assertThat(tap(tap, 0, new SetStep("TF01", new Scored(4))).orThrow().lockVersion())
                .isEqualTo(1);
        assertThat(read().step("TF01")).as("not applied again").isEqualTo(new Scored(3));
        assertThatThrownBy(() -> tap(UUID.randomUUID(), 1, new SetStep("TF02", new Scored(4))))
                .isInstanceOf(StaleData.class);
    }

    @Test
    void aRefusedTapMayBeSentAgain() {
        UUID tap = UUID.randomUUID();
        assertThat(tap(tap, 0, new SetStep("TF99", new Scored(4)))).isInstanceOf(Attempt.Refused.class);
        assertThat(tap(tap, 0, new SetStep("TF01", new Scored(4)))).isInstanceOf(Attempt.Done.class);
    }

    @Test
    void aChangeThatChangesNothingLeavesTheVersion() {
        done(new SetStep("TF01", new Scored(4)));
        assertThat(done(new SetStep("TF01", new Scored(4))).lockVersion()).isEqualTo(1);
    }

    @Test
    void onlyTheScorersOwnOpenSheetCanBeChanged() {
        SignedIn other = theatre.organisation().join("Bela Castor", Role.SUPERVISOR);
        SheetChange change = new SetStep("TF01", new Scored(4));
        for (SignedIn stranger : List.of(other, theatre.trainee())) {
            assertThatThrownBy(() -> theatre.organisation().in(() -> sheets.change(stranger, id, 0, change)))
                    .isInstanceOf(NotFound.class);
            assertThatThrownBy(() ->
                            theatre.organisation().in(() -> sheets.tap(stranger, id, UUID.randomUUID(), 0, change)))
                    .isInstanceOf(NotFound.class);
        }
        Theatre elsewhere = fixture.theatre(organisations);
        assertThatThrownBy(() -> elsewhere.organisation().in(() -> sheets.get(id)))
                .isInstanceOf(NotFound.class);
        assertThat(done(change).step("TF01")).isEqualTo(new Scored(4));
    }

    @Test
    void aSignedSheetIsOpenToNoOneAndIsSignedOnce() {
        done(new SetStep("TF01", new Scored(4)));
        assertThat(markSigned(0)).as("an old version").isFalse();
        assertThat(markSigned(1)).isTrue();
        assertThat(markSigned(1)).isFalse();
        assertThatThrownBy(() -> change(2, new SetStep("TF01", new Scored(5)))).isInstanceOf(NotFound.class);
        assertThat(read().state()).isEqualTo(SheetState.SIGNED);
        assertThat(read().step("TF01")).isEqualTo(new Scored(4));
    }

    @Test
    void stepsOfAConversionAreNotPartUntilThereWasOne() {
        UUID straight = fixture.open(theatre, Procedures.DEEP_SCLERECTOMY, ENDED);
        UUID converted = fixture.open(theatre, Procedures.DEEP_SCLERECTOMY, ENDED, Procedures.TRAB_FORNIX);
        assertThat(read(straight).steps()).isNotEmpty().containsEntry("DS07", new NotPart());
        assertThat(read(converted).steps()).isEmpty();
        Sheet sheet = theatre.organisation()
                .in(() -> sheets.change(theatre.supervisor(), straight, 0, new SetStep("DS07", new Scored(3))))
                .orThrow();
        assertThat(sheet.step("DS07")).isEqualTo(new Scored(3));
    }

    @Test
    void openSheetsAreListedOldestFirstWithAgeAndProgress() {
        UUID older = fixture.open(theatre, Procedures.DEEP_SCLERECTOMY, ENDED.minus(Duration.ofDays(1)));
        done(new SetStep("TF01", new Scored(4)));
        List<OpenSheet> list = clock.at(
                ENDED.plus(Duration.ofHours(2)),
                () -> theatre.organisation()
                        .in(() -> sheets.toScore(theatre.supervisor().personId())));
        assertThat(list).extracting(OpenSheet::sheetId).containsExactly(older, id);
        assertThat(list.get(1).age()).isEqualTo(Duration.ofHours(2));
        assertThat(list.get(1).traineeName()).isEqualTo("Fenna Hallinor");
        assertThat(list.get(1).stepsSaid()).isEqualTo(1);
        assertThat(list.get(1).stepsInAll()).isEqualTo(19);
        assertThat(list.get(0).stepsSaid()).as("what a conversion would add").isPositive();
    }

    @Test
    void aSignedSheetLeavesTheList() {
        markSigned(0);
        assertThat(theatre.organisation()
                        .in(() -> sheets.toScore(theatre.supervisor().personId())))
                .isEmpty();
    }

    private Sheet read() {
        return read(id);
    }

    private Sheet read(UUID sheet) {
        return theatre.organisation().in(() -> sheets.get(sheet));
    }

    private Attempt<Sheet> change(int version, SheetChange change) {
        return theatre.organisation().in(() -> sheets.change(theatre.supervisor(), id, version, change));
    }

    private Attempt<Sheet> tap(UUID tap, int version, SheetChange change) {
        return theatre.organisation().in(() -> sheets.tap(theatre.supervisor(), id, tap, version, change));
    }

    private boolean markSigned(int version) {
        return theatre.organisation().in(() -> sheets.markSigned(id, version));
    }

    private Sheet done(SheetChange change) {
        Sheet after = change(read().lockVersion(), change).orThrow();
        assertThat(read()).isEqualTo(after);
        return after;
    }

    private List<String> refused(SheetChange change) {
        Sheet before = read();
        List<String> keys = change(before.lockVersion(), change)
                .fold(
                        done -> List.of(),
                        reasons -> reasons.stream().map(Refusal::messageKey).toList());
        assertThat(read()).isEqualTo(before);
        return keys;
    }

    private static String outcome(Callable<Attempt<Sheet>> work) throws Exception {
        try {
            return work.call().<String>fold(done -> "done", reasons -> "refused");
        } catch (StaleData e) {
            return "stale";
        }
    }

    private static List<@Nullable String> together(List<Callable<String>> work) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(work.size());
        try {
            List<@Nullable String> outcomes = new ArrayList<>();
            for (Future<String> future : threads.invokeAll(work)) {
                outcomes.add(future.get());
            }
            return outcomes;
        } finally {
            threads.shutdown();
        }
    }
}
