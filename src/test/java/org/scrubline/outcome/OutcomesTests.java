package org.scrubline.outcome;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.Cases;
import org.scrubline.casework.TestProgramme;
import org.scrubline.outcome.OutcomeEntry.Absence;
import org.scrubline.outcome.OutcomeEntry.Baseline;
import org.scrubline.outcome.OutcomeEntry.LostReason;
import org.scrubline.outcome.OutcomeEntry.Mistake;
import org.scrubline.outcome.OutcomeEntry.NoVisit;
import org.scrubline.outcome.OutcomeEntry.Source;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.Rubrics;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;

@ScrublineTest
class OutcomesTests {

    private static final Instant ENDED = Instant.parse("2026-01-05T15:00:00Z");
    private static final LocalDate OPERATED = LocalDate.ofInstant(ENDED, ZoneId.of("Europe/London"));

    @Autowired
    Outcomes outcomes;

    @Autowired
    OutcomeWork work;

    @Autowired
    ProgrammeOutcomes programmes;

    @Autowired
    KnownOutcomes known;

    @Autowired
    Cases cases;

    @Autowired
    Rubrics rubrics;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    ScrublineClock clock;

    private TestProgramme here;
    private SignedIn administrator;
    private UUID caseId;

    @BeforeEach
    void operate() {
        here = TestProgramme.open(organisations.open(), rubrics);
        administrator = here.another("Pell Ormandine", Role.ADMINISTRATOR);
        caseId = logged("K7-204", Procedures.TRAB_FORNIX);
    }

    private UUID logged(String reference, String procedure) {
        return clock.at(
                ENDED.plus(Duration.ofHours(1)),
                () -> in(() -> cases.log(
                                here.trainee(),
                                here.entry(reference, ENDED)
                                        .procedure(procedure)
                                        .done())
                        .orThrow()
                        .id()));
    }

    @Test
    void whatWasEnteredIsReadBackWithWhoAndWhenceAndNothingIsOverwritten() {
        Visit wrong = AnEye.visit(OPERATED.plusDays(7), 41, 0);
        Visit full = new Visit(
                OPERATED.plusDays(7),
                new Pressure(14.5, 1),
                Visit.Chamber.SHALLOW,
                Visit.LeakTest.LEAKS,
                Visit.Bleb.RAISED,
                true,
                Visit.Vision.WORSE,
                Set.of(Visit.Care.MASSAGE, Visit.Care.SUTURE_RELEASE),
                false,
                false,
                Visit.SeenBy.OPERATOR);
        enter(administrator, 30, Entering.of(baseline(24), Source.CLINIC_LETTER))
                .orThrow();
        OutcomeEntry first = enter(here.trainee(), 30, Entering.of(wrong, Source.SEEN_MYSELF))
                .orThrow();
        enter(here.supervisor(), 31, new Entering(full, Source.CLINIC_LETTER, first.ordinal()))
                .orThrow();

        OutcomeFile file = read(here.director(), 31);

        assertThat(file.outcome().baseline()).contains(baseline(24));
        assertThat(file.outcome().visits())
                .extracting(CaseOutcome.Placed::visit)
                .containsExactly(full);
        assertThat(file.outcome().operatorAlone()).isTrue();
        assertThat(file.entries()).hasSize(3);
        assertThat(file.entries().get(1).content()).as("still readable").isEqualTo(wrong);
        assertThat(file.entries().get(1).source()).isEqualTo(Source.SEEN_MYSELF);
        assertThat(file.names().get(file.entries().get(2).enteredBy())).isEqualTo("Dr Ottilie Brannock");
    }

    @Test
    void aFormSentTwiceIsOneEntryAndTwoPeopleCannotPutRightTheSame() {
        Entering visit = Entering.of(AnEye.visit(OPERATED.plusDays(7), 12, 0), Source.CLINIC_LETTER);
        OutcomeEntry first = enter(administrator, 30, visit).orThrow();
        assertThat(enter(administrator, 30, visit).orThrow()).isEqualTo(first);
        Entering better = new Entering(AnEye.visit(OPERATED.plusDays(7), 14, 0), Source.CLINIC_LETTER, first.ordinal());
        Entering other = new Entering(AnEye.visit(OPERATED.plusDays(7), 16, 0), Source.CLINIC_LETTER, first.ordinal());
        enter(administrator, 30, better).orThrow();
        assertThat(key(enter(here.trainee(), 30, other))).isEqualTo("outcome.refusal.replaces");
        assertThat(read(administrator, 30).entries()).hasSize(2);
    }

    @Test
    void daysThatCannotBeAreRefusedAndTheirNeighboursAreTaken() {
        assertThat(key(visit(OPERATED.minusDays(1)))).isEqualTo("outcome.refusal.visit-day");
        assertThat(key(visit(OPERATED.plusDays(31)))).isEqualTo("outcome.refusal.visit-day");
        visit(OPERATED).orThrow();
        visit(OPERATED.plusDays(30)).orThrow();
        assertThat(key(enter(
                        administrator,
                        30,
                        Entering.of(AnEye.visit(OPERATED.plusDays(30), 9, 0), Source.CLINIC_LETTER))))
                .isEqualTo("outcome.refusal.same-day");
        assertThat(key(enter(administrator, 30, baseline(OPERATED.plusDays(1)))))
                .isEqualTo("outcome.refusal.baseline-day");
        assertThat(key(enter(
                        administrator, 30, baseline(OPERATED.minusMonths(12).minusDays(1)))))
                .isEqualTo("outcome.refusal.baseline-day");
        enter(administrator, 30, baseline(OPERATED.minusMonths(12))).orThrow();
    }

    @Test
    void anAbsenceIsRefusedWhereAVisitStandsAndBeforeItIsDue() {
        visit(OPERATED.plusDays(7)).orThrow();
        assertThat(key(absent(FollowUp.W1, Absence.MISSED))).isEqualTo("outcome.refusal.seen");
        assertThat(key(absent(FollowUp.M3, Absence.MISSED))).isEqualTo("outcome.refusal.not-due");
        absent(FollowUp.M1, Absence.MISSED).orThrow();
        absent(FollowUp.M1, Absence.ELSEWHERE).orThrow();
        absent(FollowUp.M3, Absence.LOST).orThrow();
        assertThat(read(administrator, 30).outcome().windows(OPERATED.plusDays(30)))
                .extracting(WindowState::state)
                .containsExactly(
                        WindowState.State.OVERDUE,
                        WindowState.State.SEEN,
                        WindowState.State.ELSEWHERE,
                        WindowState.State.LOST,
                        WindowState.State.LOST,
                        WindowState.State.LOST);
        assertThat(key(enter(administrator, 30, new Entering(new Mistake(), Source.SEEN_MYSELF, 99))))
                .isEqualTo("outcome.refusal.replaces");
        enter(administrator, 30, new Entering(new Mistake(), Source.SEEN_MYSELF, 1))
                .orThrow();
        assertThat(read(administrator, 30).outcome().visits()).isEmpty();
    }

    @Test
    void strangersAndCasesWithoutAnOutcomeAreNotFound() {
        SignedIn stranger = here.another("Dr Ludo Karsenmark", Role.SUPERVISOR);
        SignedIn other = here.another("Brisa Tekmor", Role.TRAINEE);
        SignedIn member = here.another("Asta Brevonne", Role.COMMITTEE_MEMBER);
        SignedIn elsewhere = here.organisation().anotherProgramme().join("Corin Elsewhere", Role.DIRECTOR);
        for (SignedIn nobody : List.of(stranger, other, member, elsewhere)) {
            assertThatExceptionOfType(NotFound.class).isThrownBy(() -> read(nobody, 30));
            assertThatExceptionOfType(NotFound.class)
                    .isThrownBy(() -> enter(nobody, 30, baseline(OPERATED.minusDays(1))));
        }
        SignedIn abroad = organisations.open().join("Corin Abroad", Role.DIRECTOR);
        assertThatExceptionOfType(NotFound.class)
                .isThrownBy(() -> organisations.open().in(() -> outcomes.read(abroad, caseId)));
        UUID needled = logged("K7-205", Procedures.NEEDLING);
        assertThatExceptionOfType(NotFound.class).isThrownBy(() -> in(() -> outcomes.read(administrator, needled)));
        assertThat(read(here.trainee(), 30).entries()).isEmpty();
    }

    @Test
    void theWorkListNamesWhatIsDueAndLosesItOnceItIsEntered() {
        logged("K7-206", Procedures.NEEDLING);
        WorkList before = list(administrator, WorkList.Show.OPEN);
        assertThat(before.cases()).isEqualTo(1);
        assertThat(before.noBaseline()).isEqualTo(1);
        assertThat(before.lines())
                .extracting(WorkList.Line::window)
                .containsExactly(FollowUp.D1, FollowUp.W1, FollowUp.M1);
        assertThat(list(administrator, WorkList.Show.DUE).lines())
                .extracting(WorkList.Line::window)
                .containsExactly(FollowUp.M1);
        assertThat(list(administrator, WorkList.Show.NO_BASELINE).lines()).hasSize(1);
        visit(OPERATED.plusDays(7)).orThrow();
        assertThat(list(here.trainee(), WorkList.Show.OVERDUE).lines())
                .extracting(WorkList.Line::window)
                .containsExactly(FollowUp.D1);
        assertThat(list(here.supervisor(), WorkList.Show.OPEN).whole()).isFalse();
        SignedIn other = here.another("Brisa Tekmor", Role.TRAINEE);
        assertThat(list(other, WorkList.Show.OPEN).cases()).isZero();
        assertThatExceptionOfType(NotFound.class)
                .isThrownBy(() -> list(here.another("Asta Brevonne", Role.COMMITTEE_MEMBER), WorkList.Show.OPEN));
    }

    @Test
    void theProgrammeCountsItsCasesByNameAndOnlyThoseWhoLeadItReadThem() {
        enter(administrator, 220, baseline(OPERATED.minusDays(2))).orThrow();
        for (FollowUp window : List.of(FollowUp.W1, FollowUp.M3, FollowUp.M6)) {
            enter(administrator, 220, Entering.of(AnEye.visit(window.due(OPERATED), 4, 0), Source.CLINIC_LETTER))
                    .orThrow();
        }
        ProgrammeOutcomes.Wish wish = new ProgrammeOutcomes.Wish(null, null, SuccessSet.UP_TO_18);
        OutcomeReport report = in(() -> programmes.read(here.director(), wish));
        assertThat(report.all()).isEqualTo(new SuccessCount(1, 0, 0, 1, 1));
        assertThat(report.trainees()).singleElement().satisfies(one -> {
            assertThat(one.name()).isEqualTo("Fenna Hallinor");
            assertThat(one.whole()).isEqualTo(1);
        });
        assertThat(report.early().get(EarlyEvent.LOW_PRESSURE)).isEqualTo(new Tally(1, 1));
        assertThat(report.early().get(EarlyEvent.LEAK))
                .as("nobody wrote it down")
                .isEqualTo(new Tally(0, 0));
        assertThat(in(() -> programmes
                        .cases(here.director(), wish, here.trainee().personId())
                        .cases()))
                .hasSize(1);
        for (SignedIn nobody : List.of(administrator, here.trainee(), here.supervisor())) {
            assertThatExceptionOfType(NotFound.class).isThrownBy(() -> in(() -> programmes.read(nobody, wish)));
        }
    }

    @Test
    void whatWasKnownAtAnInstantDoesNotChangeLater() {
        Instant before = at(110);
        enter(administrator, 111, Entering.of(AnEye.visit(FollowUp.M3.due(OPERATED), 12, 0), Source.CLINIC_LETTER))
                .orThrow();
        Instant after = at(112);
        enter(administrator, 113, new Entering(new Mistake(), Source.SEEN_MYSELF, 1))
                .orThrow();
        assertThat(in(() -> known.atMonthThree(List.of(caseId), before))).isEmpty();
        assertThat(in(() -> known.atMonthThree(List.of(caseId), after))).containsExactly(caseId);
        assertThat(in(() -> known.atMonthThree(List.of(caseId), at(114)))).isEmpty();
    }

    private WorkList list(SignedIn who, WorkList.Show show) {
        return clock.at(at(30), () -> in(() -> work.read(who, new OutcomeWork.Wish(null, show, null, 1))));
    }

    private Attempt<OutcomeEntry> visit(LocalDate day) {
        return enter(administrator, 30, Entering.of(AnEye.visit(day, 12, 0), Source.CLINIC_LETTER));
    }

    private Attempt<OutcomeEntry> absent(FollowUp window, Absence absence) {
        LostReason why = absence == Absence.LOST ? LostReason.MOVED : null;
        return enter(
                administrator,
                30,
                Entering.of(new NoVisit(window, absence, OPERATED.plusDays(20), why), Source.CLINIC_LETTER));
    }

    private static Baseline baseline(double iop) {
        return new Baseline(OPERATED.minusDays(3), new Pressure(iop, 3), 9);
    }

    private static Entering baseline(LocalDate day) {
        return Entering.of(new Baseline(day, new Pressure(24, 2), null), Source.CLINIC_LETTER);
    }

    private static Instant at(int days) {
        return ENDED.plus(Duration.ofDays(days));
    }

    private Attempt<OutcomeEntry> enter(SignedIn who, int days, Entering entering) {
        return clock.at(at(days), () -> in(() -> outcomes.enter(who, caseId, entering)));
    }

    private OutcomeFile read(SignedIn who, int days) {
        return clock.at(at(days), () -> in(() -> outcomes.read(who, caseId)));
    }

    private <T> T in(java.util.function.Supplier<T> work) {
        return here.organisation().in(work);
    }

    private static String key(Attempt<?> attempt) {
        return attempt.<String>fold(done -> "", reasons -> reasons.get(0).messageKey());
    }
}
