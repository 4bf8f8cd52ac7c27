package org.scrubline.casework;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.UUID;
import java.util.function.Supplier;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.people.People;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.Rubrics;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.support.TransactionTemplate;

@ScrublineTest
class CaseChangesTests {

    @Autowired
    private Cases cases;

    @Autowired
    private CaseChanges changes;

    @Autowired
    private Sheets sheets;

    @Autowired
    private TransactionTemplate transaction;

    @Autowired
    private People people;

    @Autowired
    private Rubrics rubrics;

    @Autowired
    private Clock clock;

    @Autowired
    private TestOrganisations organisations;

    private TestProgramme here;
    private SignedIn second;
    private Instant now;
    private UUID ended;

    @BeforeEach
    void logACase() {
        here = TestProgramme.open(organisations.open(), rubrics);
        second = here.another("Dr Hesper Vantrelle", Role.SUPERVISOR);
        now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        ended = log(here.entry("K7-204", now.minus(Duration.ofHours(2))));
    }

    @Test
    void aCaseThatBeginsOpensItsSheetOnceAndIsScoredAfterItsEnd() {
        UUID planned = log(here.entry("K7-209", null).factors("MYOPIA"));

        SurgicalCase begun = in(() -> changes.start(here.trainee(), planned)).orThrow();

        assertThat(begun.state()).isEqualTo(CaseState.STARTED);
        UUID sheet = file(planned).requests().get(0).sheetId();
        in(() -> sheets.change(here.supervisor(), sheet, 0, new SheetChange.SetStep("TF01", new StepState.Scored(4)))
                .orThrow());
        assertThat(in(() -> changes.start(here.trainee(), planned))
                        .<String>fold(done -> "", reasons -> reasons.get(0).messageKey()))
                .isEqualTo("refusal.case.not-planned");
        SurgicalCase ended = in(() -> changes.end(here.supervisor(), planned, now.plusSeconds(300)))
                .orThrow();
        assertThat(ended.complexitySetLate()).isFalse();
        assertThat(file(planned).requests()).hasSize(1);
        assertThat(in(() -> sheets.get(sheet)).step("TF01")).isEqualTo(new StepState.Scored(4));
    }

    @Test
    void aPlannedCaseThatHasEndedKeepsItsComplexityInTimeAndIsScored() {
        UUID planned = log(here.entry("K7-205", null).factors("MYOPIA"));

        SurgicalCase after = in(() -> changes.end(here.trainee(), planned, now.plusSeconds(300)))
                .orThrow();

        assertThat(after.state()).isEqualTo(CaseState.ENDED);
        assertThat(after.endedAt()).isEqualTo(now.plusSeconds(300));
        assertThat(after.complexitySetLate()).isFalse();
        assertThat(file(planned).requests())
                .singleElement()
                .satisfies(request -> assertThat(request.scorer().id())
                        .isEqualTo(here.supervisor().personId()));
    }

    @Test
    void aPlanMadeAfterTheCaseIsLateAfterAll() {
        UUID planned = log(here.entry("K7-205", null).factors("MYOPIA"));

        SurgicalCase after = in(() -> changes.end(here.trainee(), planned, now.minus(Duration.ofHours(1))))
                .orThrow();

        assertThat(after.complexitySetLate()).isTrue();
    }

    @Test
    void onlyAPlannedCaseCanEndAndNotInTheFuture() {
        UUID planned = log(here.entry("K7-205", null));

        assertThat(reasons(in(() -> changes.end(here.trainee(), planned, now.plus(Duration.ofDays(1))))))
                .containsExactly("refusal.case.end.future");
        assertThat(in(() -> cases.get(planned)).state()).isEqualTo(CaseState.PLANNED);
        assertThat(reasons(in(() -> changes.end(here.trainee(), ended, now))))
                .containsExactly("refusal.case.not-planned");
    }

    @Test
    void aSecondSupervisorIsAskedWithTheSameRubric() {
        UUID sheet = in(() -> changes.askScorer(here.trainee(), ended, traineeId(), second.personId()))
                .orThrow();

        assertThat(file(ended).requests()).hasSize(2);
        assertThat(in(() -> sheets.get(sheet)).rubricVersionId())
                .isEqualTo(in(() -> sheets.get(onlySheetOf(here.supervisor()))).rubricVersionId());
        assertThat(in(() -> cases.open(second, ended)).requests()).hasSize(1);
    }

    @Test
    void aSupervisorIsAskedOnceAndOnlyIfAllowed() {
        SignedIn peer = here.another("Hadi Nkolaris", Role.TRAINEE);
        UUID planned = log(here.entry("K7-205", null));

        assertThat(reasons(ask(ended, here.supervisor()))).containsExactly("refusal.case.supervisor.asked");
        assertThat(reasons(ask(ended, here.trainee()))).containsExactly("refusal.case.supervisor.self");
        assertThat(reasons(ask(ended, peer))).containsExactly("refusal.case.supervisor.unknown");
        assertThat(reasons(ask(planned, second))).containsExactly("refusal.case.not-ended");
        assertThat(reasons(in(() -> changes.askScorer(here.trainee(), ended, peer.personId(), second.personId()))))
                .containsExactly("refusal.case.trainee.absent");
        in(() -> {
            people.declareConflict(second.personId(), traineeId());
            return true;
        });
        assertThat(reasons(ask(ended, second))).containsExactly("refusal.case.supervisor.conflict");
        assertThat(file(ended).requests()).hasSize(1);
    }

    @Test
    void aSecondTraineeHasAnOwnSheetAndSeesNoOther() {
        SignedIn peer = here.another("Hadi Nkolaris", Role.TRAINEE);

        UUID sheet = in(() -> changes.addTrainee(
                        here.trainee(),
                        ended,
                        peer.personId(),
                        Part.PARTS,
                        here.supervisor().personId()))
                .orThrow();

        CaseFile theirs = in(() -> cases.open(peer, ended));
        assertThat(theirs.requests())
                .singleElement()
                .satisfies(request -> assertThat(request.sheetId()).isEqualTo(sheet));
        assertThat(theirs.trainees()).hasSize(2);
        assertThat(in(() -> cases.claimedPart(ended, peer.personId()))).isEqualTo(Part.PARTS);
        assertThat(reasons(in(() ->
                        changes.addTrainee(here.trainee(), ended, peer.personId(), Part.PARTS, second.personId()))))
                .containsExactly("refusal.case.trainee.present");
        assertThat(reasons(in(() ->
                        changes.addTrainee(here.trainee(), ended, second.personId(), Part.PARTS, second.personId()))))
                .containsExactly("refusal.case.trainee.unknown");
    }

    @Test
    void anUntouchedSheetIsHandedOnWithAReason() {
        UUID sheet = onlySheetOf(here.supervisor());

        in(() -> changes.handOn(here.director(), ended, sheet, second.personId(), "left the programme"))
                .orThrow();

        assertThat(in(() -> sheets.get(sheet)).scorerId()).isEqualTo(second.personId());
        assertThat(in(() -> sheets.toScore(here.supervisor().personId()))).isEmpty();
        assertThat(in(() -> sheets.toScore(second.personId()))).hasSize(1);
        assertThatThrownBy(() -> in(() -> cases.open(here.supervisor(), ended))).isInstanceOf(NotFound.class);
    }

    @Test
    void aSheetSomeoneWorkedOnStaysWithThem() {
        UUID sheet = onlySheetOf(here.supervisor());
        in(() -> sheets.change(here.supervisor(), sheet, 0, new SheetChange.SetStep("TF01", new StepState.Scored(4))))
                .orThrow();

        assertThat(reasons(in(() -> changes.handOn(here.director(), ended, sheet, second.personId(), "left"))))
                .containsExactly("refusal.case.sheet.touched");
        assertThat(in(() -> sheets.get(sheet)).scorerId())
                .isEqualTo(here.supervisor().personId());
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " \n ", "a\0b"})
    void handingOnNeedsAReasonThatIsText(String reason) {
        UUID sheet = onlySheetOf(here.supervisor());

        assertThat(reasons(in(() -> changes.handOn(here.director(), ended, sheet, second.personId(), reason))))
                .hasSize(1)
                .first()
                .asString()
                .isIn("refusal.case.reason", "refusal.text.characters");
        assertThat(in(() -> sheets.get(sheet)).scorerId())
                .isEqualTo(here.supervisor().personId());
    }

    @Test
    void aSheetOfAnotherCaseIsNotFound() {
        UUID other = log(here.entry("K7-205", now));

        assertThatThrownBy(() -> in(() -> changes.handOn(
                        here.director(), other, onlySheetOf(here.supervisor()), second.personId(), "left")))
                .isInstanceOf(NotFound.class);
    }

    @Test
    void anAbandonedCaseKeepsItsReasonAndCountsNoMore() {
        assertThat(operated()).isEqualTo(1);

        SurgicalCase after = in(() -> changes.abandon(here.supervisor(), ended, " bleeding before the flap "))
                .orThrow();

        assertThat(after.state()).isEqualTo(CaseState.ABANDONED);
        assertThat(after.abandonedReason()).isEqualTo("bleeding before the flap");
        assertThat(operated()).isZero();
        assertThat(reasons(in(() -> changes.abandon(here.supervisor(), ended, "again"))))
                .containsExactly("refusal.case.abandoned");
    }

    @Test
    void abandoningNeedsAReasonOfAtMostFiveHundredCharacters() {
        assertThat(reasons(in(() -> changes.abandon(here.trainee(), ended, " "))))
                .containsExactly("refusal.case.reason");
        assertThat(reasons(in(() -> changes.abandon(here.trainee(), ended, "x".repeat(501)))))
                .containsExactly("refusal.text.length");
        assertThat(in(() -> cases.get(ended)).state()).isEqualTo(CaseState.ENDED);
        assertThat(reasons(in(() -> changes.abandon(here.trainee(), ended, "x".repeat(500)))))
                .isEmpty();
    }

    @Test
    void aConvertedCaseNamesWhatItBecame() {
        assertThat(reasons(in(() -> changes.convert(here.trainee(), ended, Procedures.TRAB_FORNIX))))
                .containsExactly("refusal.case.converted");
        assertThat(reasons(in(() -> changes.convert(here.trainee(), ended, "APPENDIX"))))
                .containsExactly("refusal.case.converted");

        SurgicalCase after = in(() -> changes.convert(here.trainee(), ended, Procedures.DRAINAGE_DEVICE))
                .orThrow();

        assertThat(after.convertedTo()).isEqualTo(Procedures.DRAINAGE_DEVICE);
        assertThat(after.procedureCode()).isEqualTo(Procedures.TRAB_FORNIX);
    }

    @Test
    void onceASheetIsSignedTheFactsStay() {
        sign(onlySheetOf(here.supervisor()));

        assertThat(reasons(in(() -> changes.abandon(here.trainee(), ended, "late"))))
                .containsExactly("refusal.case.signed");
        assertThat(reasons(in(() -> changes.convert(here.trainee(), ended, Procedures.DRAINAGE_DEVICE))))
                .containsExactly("refusal.case.signed");
        assertThat(in(() -> cases.get(ended)).state()).isEqualTo(CaseState.ENDED);
    }

    @Test
    void aSignedSheetSettlesWhetherTheTraineeOperated() {
        UUID sheet = onlySheetOf(here.supervisor());
        in(() -> sheets.change(
                        here.supervisor(), sheet, 0, new SheetChange.ConfirmRole(Part.ASSISTED, Supervision.SCRUBBED)))
                .orThrow();
        assertThat(operated()).as("a draft changes no count").isEqualTo(1);

        sign(sheet);

        assertThat(operated()).isZero();
    }

    @Test
    void nobodyElseChangesACase() {
        SignedIn stranger = here.another("Dr Ruy Estavane", Role.SUPERVISOR);

        assertThatThrownBy(() -> in(() -> changes.abandon(stranger, ended, "not mine")))
                .isInstanceOf(NotFound.class);
        assertThatThrownBy(() -> in(() -> changes.askScorer(stranger, ended, traineeId(), stranger.personId())))
                .isInstanceOf(NotFound.class);
        assertThatThrownBy(() -> in(() -> changes.abandon(here.trainee(), UUID.randomUUID(), "unknown")))
                .isInstanceOf(NotFound.class);
    }

    private void sign(UUID sheet) {
        Boolean signed = in(() -> transaction.execute(
                status -> sheets.markSigned(sheet, sheets.get(sheet).lockVersion())));
        assertThat(signed).isTrue();
    }

    private Attempt<UUID> ask(UUID caseId, SignedIn scorer) {
        return in(() -> changes.askScorer(here.trainee(), caseId, traineeId(), scorer.personId()));
    }

    private UUID onlySheetOf(SignedIn scorer) {
        return file(ended).requests().stream()
                .filter(request -> request.scorer().id().equals(scorer.personId()))
                .findFirst()
                .orElseThrow()
                .sheetId();
    }

    private CaseFile file(UUID caseId) {
        return in(() -> cases.open(here.director(), caseId));
    }

    private int operated() {
        return in(() -> cases.operated(traineeId(), Procedures.TRAB_FORNIX));
    }

    private UUID traineeId() {
        return here.trainee().personId();
    }

    private UUID log(TestProgramme.Entry entry) {
        return in(() -> cases.log(here.trainee(), entry.done()).orThrow().id());
    }

    private static List<String> reasons(Attempt<?> attempt) {
        return attempt.fold(
                done -> List.of(),
                reasons -> reasons.stream().map(Refusal::messageKey).toList());
    }

    private <T> T in(Supplier<T> work) {
        return here.organisation().in(work);
    }
}
