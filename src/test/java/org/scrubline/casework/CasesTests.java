package org.scrubline.casework;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.casework.TestProgramme.Entry;
import org.scrubline.people.People;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Band;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.Rubrics;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;

@ScrublineTest
class CasesTests {

    @Autowired
    private Cases cases;

    @Autowired
    private People people;

    @Autowired
    private Rubrics rubrics;

    @Autowired
    private Clock clock;

    @Autowired
    private TestOrganisations organisations;

    private TestProgramme here;
    private Instant now;

    @BeforeEach
    void openTheProgramme() {
        here = TestProgramme.open(organisations.open(), rubrics);
        now = clock.instant().truncatedTo(ChronoUnit.MICROS);
    }

    @Test
    void aLoggedCaseIsReadBackAsEntered() {
        SurgicalCase logged = log(entry("K7-204").factors("SCARRED", "YOUNG")).orThrow();

        SurgicalCase read = in(() -> cases.get(logged.id()));

        assertThat(read).isEqualTo(logged);
        assertThat(read.state()).isEqualTo(CaseState.ENDED);
        assertThat(read.factors()).containsExactly("SCARRED", "YOUNG");
        assertThat(read.band()).as("two points and one").isEqualTo(Band.C);
        assertThat(read.endedAt()).isEqualTo(now.minus(Duration.ofHours(1)));
        assertThat(in(() -> cases.claimedPart(logged.id(), here.trainee().personId())))
                .isEqualTo(Part.WHOLE_CASE);
    }

    @Test
    void theSupervisorNamedGetsOneOpenSheet() {
        SurgicalCase logged = log(entry("K7-204")).orThrow();

        CaseFile file = in(() -> cases.open(here.supervisor(), logged.id()));

        assertThat(file.requests()).singleElement().satisfies(request -> {
            assertThat(request.state()).isEqualTo(SheetState.OPEN);
            assertThat(request.scorer().name()).isEqualTo("Dr Ottilie Brannock");
            assertThat(request.trainee().id()).isEqualTo(here.trainee().personId());
            assertThat(request.untouched()).isTrue();
        });
    }

    @Test
    void factorsEnteredAfterTheCaseAreSetLate() {
        assertThat(log(entry("K7-204")).orThrow().complexitySetLate()).isTrue();
    }

    @Test
    void aPlannedCaseHasItsComplexityInTimeAndNoSheetYet() {
        SurgicalCase planned = log(here.entry("K7-204", null).factors("MYOPIA")).orThrow();

        CaseFile file = in(() -> cases.open(here.supervisor(), planned.id()));

        assertThat(planned.state()).isEqualTo(CaseState.PLANNED);
        assertThat(planned.complexitySetLate()).isFalse();
        assertThat(planned.endedAt()).isNull();
        assertThat(file.requests()).isEmpty();
        assertThat(file.plannedScorer()).map(CaseFile.Named::name).contains("Dr Ottilie Brannock");
    }

    @Test
    void aSupervisorLogsACaseForATraineeSupervised() {
        Attempt<SurgicalCase> attempt =
                in(() -> cases.log(here.supervisor(), entry("K7-204").done()));

        assertThat(attempt.orThrow().loggedBy()).isEqualTo(here.supervisor().personId());
        assertThat(ofTrainee()).hasSize(1);
    }

    static Stream<Arguments> refusals() {
        return Stream.of(
                refusal(
                        "a reference of another form",
                        "refusal.case.reference.form",
                        entry -> entry.reference("K7204")),
                refusal("a reference with a NUL", "refusal.case.reference.form", entry -> entry.reference("K7-20\0")),
                refusal(
                        "a reference as long as a book",
                        "refusal.case.reference.form",
                        entry -> entry.reference("K".repeat(100_000))),
                refusal("no published procedure", "refusal.case.procedure", entry -> entry.procedure("APPENDIX")),
                refusal("an unknown site", "refusal.case.site", entry -> entry.site(UUID.randomUUID())),
                refusal(
                        "an unknown supervisor",
                        "refusal.case.supervisor.unknown",
                        entry -> entry.supervisor(UUID.randomUUID())),
                refusal("an unknown factor", "refusal.case.factors", entry -> entry.factors("SCARRED", "TALL")),
                refusal("an unknown programme", "refusal.case.programme", entry -> entry.programme(UUID.randomUUID())));
    }

    private static Arguments refusal(String what, String key, UnaryOperator<Entry> change) {
        return Arguments.of(what, key, change);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("refusals")
    void anEntryWithOneFaultIsRefusedForItAndNothingIsStored(String what, String key, UnaryOperator<Entry> change) {
        assertThat(reasons(log(change.apply(entry("K7-204"))))).containsExactly(key);
        assertThat(ofTrainee()).isEmpty();

        assertThat(log(entry("K7-204")).orThrow().id())
                .as("the twin without the fault")
                .isNotNull();
        assertThat(ofTrainee()).hasSize(1);
    }

    @Test
    void everyReasonIsSaidAtOnce() {
        Attempt<SurgicalCase> attempt = log(entry("nonsense")
                .procedure("APPENDIX")
                .site(UUID.randomUUID())
                .supervisor(here.trainee())
                .factors("TALL")
                .endedAt(now.plus(Duration.ofDays(1))));

        assertThat(reasons(attempt))
                .containsExactly(
                        "refusal.case.reference.form",
                        "refusal.case.procedure",
                        "refusal.case.site",
                        "refusal.case.end.future",
                        "refusal.case.supervisor.self",
                        "refusal.case.factors");
    }

    @ParameterizedTest
    @ValueSource(longs = {601, 100_000})
    void anEndMoreThanTenMinutesAheadIsRefused(long seconds) {
        assertThat(reasonsAtNow(seconds)).containsExactly("refusal.case.end.future");
    }

    @ParameterizedTest
    @ValueSource(longs = {0, 599, 600, -86_400 * 365})
    void anEndWithinTheToleranceOfClocksIsAccepted(long seconds) {
        assertThat(reasonsAtNow(seconds)).isEmpty();
    }

    @Test
    void anEndManyYearsAgoIsASlip() {
        assertThat(reasonsAtNow(-86_400L * 365 * 5 - 1)).containsExactly("refusal.case.end.past");
        assertThat(reasons(log(entry("K7-205").endedAt(Instant.MIN)))).containsExactly("refusal.case.end.past");
    }

    @Test
    void nobodyScoresTheirOwnTraining() {
        SignedIn both = here.another("Dr Kavi Balcairn", Role.SUPERVISOR);
        in(() -> {
            people.grant(here.programme(), both.personId(), Role.TRAINEE);
            return true;
        });
        SignedIn now = here.organisation().now(both.personId());

        assertThat(reasons(in(() -> cases.log(
                        now, entry("K7-204").trainee(now).supervisor(now).done()))))
                .containsExactly("refusal.case.supervisor.self");
        assertThat(in(() -> cases.log(now, entry("K7-204").trainee(now).done())).orThrow())
                .isNotNull();
    }

    @Test
    void aDeclaredConflictBarsTheSupervisorBothWays() {
        SignedIn related = here.another("Dr Mirembe Astolane", Role.SUPERVISOR);
        SignedIn declares = here.another("Dr Ruy Estavane", Role.SUPERVISOR);
        in(() -> {
            people.declareConflict(here.trainee().personId(), related.personId());
            people.declareConflict(declares.personId(), here.trainee().personId());
            return true;
        });

        assertThat(reasons(log(entry("K7-204").supervisor(related))))
                .containsExactly("refusal.case.supervisor.conflict");
        assertThat(reasons(log(entry("K7-204").supervisor(declares))))
                .containsExactly("refusal.case.supervisor.conflict");
        assertThat(reasons(log(entry("K7-204")))).isEmpty();
    }

    @Test
    void onlyASupervisorIsAsked() {
        SignedIn peer = here.another("Hadi Nkolaris", Role.TRAINEE);

        assertThat(reasons(log(entry("K7-204").supervisor(peer)))).containsExactly("refusal.case.supervisor.unknown");
    }

    @Test
    void nobodyLogsForAnotherWithoutHavingSupervised() {
        SignedIn peer = here.another("Hadi Nkolaris", Role.TRAINEE);
        SignedIn other = here.another("Dr Ruy Estavane", Role.SUPERVISOR);

        assertThat(reasons(in(() -> cases.log(peer, entry("K7-204").done()))))
                .containsExactly("refusal.case.trainee.other");
        assertThat(reasons(in(() -> cases.log(other, entry("K7-204").done()))))
                .containsExactly("refusal.case.supervisor.other");
        assertThat(reasons(in(() -> cases.log(
                        here.supervisor(), entry("K7-204").trainee(other).done()))))
                .containsExactly("refusal.case.trainee.unknown");
        assertThat(reasons(in(() -> cases.log(here.director(), entry("K7-204").done()))))
                .containsExactly("refusal.case.trainee.other");
    }

    @Test
    void idsOfAnotherOrganisationAreUnknown() {
        TestProgramme elsewhere = TestProgramme.open(organisations.open(), rubrics);
        SurgicalCase theirs = elsewhere
                .organisation()
                .in(() -> cases.log(
                                elsewhere.trainee(),
                                elsewhere.entry("K7-204", now).eye(Eye.LEFT).done())
                        .orThrow());

        assertThat(reasons(
                        log(entry("K7-204").site(elsewhere.organisation().site().id()))))
                .containsExactly("refusal.case.site");
        assertThat(reasons(log(entry("K7-204").supervisor(elsewhere.supervisor()))))
                .containsExactly("refusal.case.supervisor.unknown");
        assertThat(reasons(log(entry("K7-204").programme(elsewhere.programme()))))
                .containsExactly("refusal.case.programme");
        assertThat(reasons(log(entry("K7-204").secondEyeOf(theirs.id())))).containsExactly("refusal.case.second-eye");
        assertThatThrownBy(() -> in(() -> cases.get(theirs.id()))).isInstanceOf(NotFound.class);
        assertThat(log(entry("K7-204")).orThrow())
                .as("the same reference elsewhere is free here")
                .isNotNull();
    }

    @Test
    void aReferenceIsTakenOnceInAProgramme() {
        log(entry("K7-204")).orThrow();

        assertThat(reasons(log(entry("K7-204").eye(Eye.LEFT)))).containsExactly("refusal.case.reference.taken");
        assertThat(reasons(log(entry("K7-204").site(UUID.randomUUID()))))
                .containsExactly("refusal.case.site", "refusal.case.reference.taken");
        assertThat(reasons(log(entry("K7-205")))).isEmpty();
    }

    @Test
    void twoWhoLogTheSameReferenceAtOnceStoreOneCase() throws Exception {
        CyclicBarrier start = new CyclicBarrier(2);
        Callable<Boolean> logging = () -> {
            start.await(10, TimeUnit.SECONDS);
            return log(entry("K7-204")).fold(done -> true, reasons -> false);
        };
        ExecutorService two = Executors.newFixedThreadPool(2);
        try {
            List<Future<Boolean>> both = List.of(two.submit(logging), two.submit(logging));

            assertThat(List.of(both.get(0).get(), both.get(1).get())).containsExactlyInAnyOrder(true, false);
        } finally {
            two.shutdown();
        }
        assertThat(ofTrainee()).hasSize(1);
    }

    @Test
    void theOtherEyeOfTheSameDayIsLinked() {
        SurgicalCase right = log(entry("K7-204")).orThrow();

        SurgicalCase left =
                log(entry("K7-205").eye(Eye.LEFT).secondEyeOf(right.id())).orThrow();

        assertThat(in(() -> cases.get(left.id())).secondEyeOf()).isEqualTo(right.id());
    }

    @Test
    void theSameEyeOrAnotherDayIsNoSecondEye() {
        SurgicalCase right = log(entry("K7-204")).orThrow();

        assertThat(reasons(log(entry("K7-205").secondEyeOf(right.id())))).containsExactly("refusal.case.second-eye");
        assertThat(reasons(log(entry("K7-205")
                        .eye(Eye.LEFT)
                        .endedAt(now.minus(Duration.ofDays(2)))
                        .secondEyeOf(right.id()))))
                .containsExactly("refusal.case.second-eye");
    }

    @Test
    void aCaseIsOpenToItsPeopleAndToNobodyElse() {
        SurgicalCase logged = log(entry("K7-204")).orThrow();
        SignedIn peer = here.another("Hadi Nkolaris", Role.TRAINEE);
        SignedIn colleague = here.another("Dr Ruy Estavane", Role.SUPERVISOR);

        assertThat(List.of(here.trainee(), here.supervisor(), here.director()))
                .allSatisfy(who -> assertThat(in(() -> cases.open(who, logged.id()))
                                .surgicalCase()
                                .id())
                        .isEqualTo(logged.id()));
        assertThat(List.of(peer, colleague)).allSatisfy(who -> {
            assertThatThrownBy(() -> in(() -> cases.open(who, logged.id()))).isInstanceOf(NotFound.class);
            assertThat(in(() -> cases.byReference(who, here.programme(), "K7-204")))
                    .isEmpty();
        });
        assertThat(in(() -> cases.byReference(here.trainee(), here.programme(), "K7-204")))
                .contains(logged);
    }

    @Test
    void theListOfATraineeIsNewestFirstWithItsSheets() {
        assertThat(ofTrainee()).isEmpty();
        log(entry("K7-204").endedAt(now.minus(Duration.ofDays(3)))).orThrow();
        log(entry("B2-001").part(Part.ASSISTED)).orThrow();

        List<TraineeCase> list = ofTrainee();

        assertThat(list).extracting(line -> line.surgicalCase().reference()).containsExactly("B2-001", "K7-204");
        assertThat(list).extracting(TraineeCase::claimedPart).containsExactly(Part.ASSISTED, Part.WHOLE_CASE);
        assertThat(list)
                .allSatisfy(line -> assertThat(line.sheets())
                        .singleElement()
                        .satisfies(sheet -> assertThat(sheet.state()).isEqualTo(SheetState.OPEN)));
    }

    @Test
    void operatedCountsEndedCasesOfTheProcedureInWhichTheTraineeOperated() {
        log(entry("A1-001")).orThrow();
        log(entry("A1-002").part(Part.PARTS)).orThrow();
        log(entry("A1-003").part(Part.ASSISTED)).orThrow();
        log(entry("A1-004").procedure(Procedures.NEEDLING)).orThrow();
        log(here.entry("A1-005", null)).orThrow();

        assertThat(operated(Procedures.TRAB_FORNIX)).isEqualTo(2);
        assertThat(operated(Procedures.NEEDLING)).isEqualTo(1);
        assertThat(operated(Procedures.GEL_STENT)).isZero();
    }

    @Test
    void aProposedReferenceIsWellFormedAndAccepted() {
        String proposed = in(() -> cases.proposeReference(here.programme()));

        assertThat(proposed).matches("[A-Z][0-9]-[0-9]{3}");
        assertThat(log(entry(proposed)).orThrow().reference()).isEqualTo(proposed);
    }

    private int operated(String procedure) {
        return in(() -> cases.operated(here.trainee().personId(), procedure));
    }

    private List<String> reasonsAtNow(long secondsAhead) {
        return ((org.scrubline.platform.ScrublineClock) clock)
                .at(now, () -> reasons(log(entry("K7-204").endedAt(now.plusSeconds(secondsAhead)))));
    }

    private Entry entry(String reference) {
        return here.entry(reference, now.minus(Duration.ofHours(1)));
    }

    private Attempt<SurgicalCase> log(Entry entry) {
        return in(() -> cases.log(here.trainee(), entry.done()));
    }

    private List<TraineeCase> ofTrainee() {
        return in(() -> cases.ofTrainee(here.trainee().personId()));
    }

    private static List<String> reasons(Attempt<?> attempt) {
        return attempt.fold(
                done -> List.of(),
                reasons -> reasons.stream().map(Refusal::messageKey).toList());
    }

    private <T> T in(java.util.function.Supplier<T> work) {
        return here.organisation().in(work);
    }
}
