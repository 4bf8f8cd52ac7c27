package org.scrubline.signoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.Cases;
import org.scrubline.casework.Part;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.SheetChange;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.SheetState;
import org.scrubline.casework.StepState;
import org.scrubline.casework.Supervision;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.TakeoverReason;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;

/** New versions of signed records. Names beginning with a number follow the project's table of signing events. */
@ScrublineTest
class NewVersionTests {

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SheetFixture sheetFixture;

    @Autowired
    SigningFixture fixture;

    @Autowired
    RecordFixture acts;

    @Autowired
    VersionFixture signatures;

    @Autowired
    SignedSheets signedSheets;

    @Autowired
    Signing signing;

    @Autowired
    Cases cases;

    @Autowired
    Versions versions;

    @Autowired
    Ledger ledger;

    @Autowired
    ScrublineClock clock;

    Theatre theatre;
    SignedIn scorer;

    @BeforeEach
    void openATheatre() {
        theatre = sheetFixture.theatre(organisations);
        scorer = theatre.supervisor();
    }

    @Test
    void whoMayCountersignTheNewestVersionReadsTheOlderOnesAsLongAsThatIsAwaited() {
        SignedSheet first = signed();
        SignedIn second = theatre.organisation().join("Ottilie Brannock", Role.SUPERVISOR);
        SignedIn third = theatre.organisation().join("Ludo Karsenmark", Role.SUPERVISOR);
        signatures.sign(theatre, second, RecordEvent.COUNTERSIGNED, first, "").orThrow();
        assertThatThrownBy(() -> acts.history(theatre, third, first.id())).isInstanceOf(NotFound.class);

        SignedSheet next =
                acts.newVersion(theatre, scorer, first, new SheetChange.SetStep("TF09", new StepState.Scored(5)));
        assertThat(acts.history(theatre, third, first.id()).versions()).hasSize(2);
        signatures.sign(theatre, second, RecordEvent.COUNTERSIGNED, next, "").orThrow();
        assertThatThrownBy(() -> acts.history(theatre, third, first.id())).isInstanceOf(NotFound.class);
    }

    @Test
    void g5EveryRequestThatChangesASignedSheetIsAConflictThatNamesTheOneWay() throws Exception {
        SignedSheet signed = signed();
        for (String path : List.of("", "/review/untouched")) {
            mockMvc.perform(post("/sheets/" + signed.sheetId() + path)
                            .param("version", "1")
                            .param("step.TF09", "5")
                            .with(LogIn.as(scorer))
                            .with(csrf()))
                    .andExpect(status().isConflict())
                    .andExpect(
                            content().string(containsString("Only a new version, with its reason, can put it right")));
        }
        mockMvc.perform(post("/sheets/{id}/taps", signed.sheetId())
                        .contentType("application/json")
                        .content("{}")
                        .with(LogIn.as(scorer))
                        .with(csrf()))
                .andExpect(status().isConflict());
        assertThat(counting(signed)).isEqualTo(signed);
    }

    @Test
    void g6BothVersionsAreReadableTheDifferenceIsMarkedAndTheNewestCounts() throws Exception {
        SignedSheet first = signed();
        SignedSheet second = acts.newVersion(theatre, scorer, first, level("TF09", 2));

        assertThat(second.versionNo()).isEqualTo(2);
        assertThat(counting(first)).isEqualTo(second);
        assertThat(ofTrainee()).containsExactly(second);
        SignedIn director = theatre.organisation().join("Mirabel Osk", Role.DIRECTOR);
        for (SignedIn who : List.of(theatre.trainee(), scorer, director)) {
            read(who, "/signed/" + first.id())
                    .andExpect(content()
                            .string(allOf(
                                    containsString("Version 1 of 2; version 2 counts."),
                                    containsString("/signed/" + second.id()))));
            read(who, "/signed/" + second.id())
                    .andExpect(content()
                            .string(allOf(
                                    not(containsString("counts nowhere")),
                                    containsString(RecordFixture.REASON),
                                    containsString("I observed this case and sign this new version of my scores"))));
            read(who, "/signed/" + first.id() + "/compare/" + second.id())
                    .andExpect(content()
                            .string(allOf(
                                    containsString("3 lines differ."),
                                    containsString("differs"),
                                    containsString("not yet safe"))));
        }
        mockMvc.perform(get("/sheets/{id}/signed", first.sheetId()).with(LogIn.as(scorer)))
                .andExpect(redirectedUrl("/signed/" + second.id()));
    }

    @Test
    void g6TheNumbersOfAnEarlierDayCanBeMadeAgain() {
        Instant start = clock.instant().minus(Duration.ofDays(10)).truncatedTo(ChronoUnit.MILLIS);
        SignedSheet first = clock.at(start, this::signed);
        SignedSheet second = clock.at(
                start.plus(Duration.ofDays(2)), () -> acts.newVersion(theatre, scorer, first, level("TF09", 2)));
        SignedIn director = theatre.organisation().join("Mirabel Osk", Role.DIRECTOR);
        clock.at(start.plus(Duration.ofDays(4)), () -> acts.askVoid(theatre, scorer, first.id()));
        clock.at(start.plus(Duration.ofDays(5)), () -> acts.decideVoid(theatre, director, first.id(), true));

        assertThat(knownAt(start.minusMillis(1))).isEmpty();
        assertThat(knownAt(start)).containsExactly(first);
        assertThat(knownAt(start.plus(Duration.ofDays(1)))).containsExactly(first);
        assertThat(knownAt(start.plus(Duration.ofDays(3)))).containsExactly(second);
        assertThat(knownAt(start.plus(Duration.ofDays(4))))
                .as("asked is not void")
                .containsExactly(second);
        assertThat(knownAt(start.plus(Duration.ofDays(5)))).isEmpty();
        assertThat(ofTrainee()).isEmpty();
    }

    @Test
    void theSignedTextCarriesReasonReplacedHashSignerAndRole() {
        SignedSheet first = signed();
        SignedSheet second = acts.newVersion(theatre, scorer, first, level("TF09", 2));
        SheetContent content = SignedContent.read(second.content()).reviewed();

        assertThat(content.version()).isEqualTo(2);
        assertThat(content.replaces())
                .isEqualTo(new SheetContent.Replaces(
                        first.id(), 1, first.contentHash(), RecordFixture.REASON, VersionBasis.SCORER, null));
        assertThat(content.signer().role()).isEqualTo("SUPERVISOR");
        assertThat(CanonicalJson.sha256(CanonicalJson.canonical(second.content())))
                .isEqualTo(second.contentHash());
        assertThat(theatre.organisation().in(() -> ledger.find(LeafKind.SIGNATURE, second.id())))
                .isPresent();
    }

    @Test
    void theDraftStartsFromWhatWasSignedWithEventsMeasuresAndTexts() {
        UUID sheet = fixture.complete(theatre, ended());
        fixture.change(
                theatre, sheet, new SheetChange.AddEvent("TAKEOVER", "TF12", TakeoverReason.SAFETY, "Took the punch."));
        fixture.change(theatre, sheet, new SheetChange.SetFeedback("Calm hands.", "Loosen the suture earlier."));
        SignedSheet first = sign(sheet);

        acts.open(theatre, scorer, first.id()).orThrow();
        Sheet draft = fixture.read(theatre, sheet);
        assertThat(draft.state()).isEqualTo(SheetState.REOPENED);
        SignedSheet second = sign(sheet);
        assertThat(second.steps()).isEqualTo(first.steps());
        assertThat(second.events()).isEqualTo(first.events());
        SheetContent one = SignedContent.read(first.content()).reviewed();
        SheetContent two = SignedContent.read(second.content()).reviewed();
        assertThat(two.events()).isEqualTo(one.events());
        assertThat(two.strength()).isEqualTo("Calm hands.");
        assertThat(two.firstScoredAt()).isEqualTo(one.firstScoredAt());
    }

    @Test
    void whileItIsOpenTheOldVersionCountsAndDroppedItLeavesNoTrace() {
        SignedSheet first = signed();
        UUID sheet = acts.open(theatre, scorer, first.id()).orThrow();
        acts.change(theatre, scorer, sheet, level("TF09", 1));
        acts.change(theatre, scorer, sheet, new SheetChange.ConfirmRole(Part.ASSISTED, Supervision.SCRUBBED));
        acts.change(theatre, scorer, sheet, new SheetChange.AddEvent("TAKEOVER", "TF12", TakeoverReason.TIME, "Late."));

        assertThat(counting(first)).isEqualTo(first);
        assertThat(operated(first)).as("experience, as it is signed").isEqualTo(1);
        acts.drop(theatre, scorer, first.id());
        acts.drop(theatre, scorer, first.id());

        Sheet after = fixture.read(theatre, sheet);
        assertThat(after.state()).isEqualTo(SheetState.SIGNED);
        assertThat(after.step("TF09")).isEqualTo(new StepState.Scored(4));
        assertThat(after.events()).isEmpty();
        assertThat(after.confirmedPart()).isEqualTo(Part.WHOLE_CASE);
        assertThat(acts.history(theatre, scorer, first.id()).versions()).containsExactly(first);
        assertThat(acts.newVersion(theatre, scorer, first, level("TF09", 3)).versionNo())
                .isEqualTo(2);
    }

    @Test
    void aNewVersionIsNeverLateButStaysTheLateEntryItsFirstWas() {
        Instant end = clock.instant().minus(Duration.ofDays(40));
        SignedSheet late = clock.at(end.plus(Duration.ofDays(5)), () -> fixture.signed(theatre, end));
        SignedSheet intime = clock.at(end.plus(Duration.ofHours(5)), () -> fixture.signed(theatre, end));

        SignedSheet second = acts.newVersion(theatre, scorer, late, level("TF09", 3));
        assertThat(second.late()).isTrue();
        assertThat(second.firstSignedAt()).isEqualTo(late.signedAt());
        assertThat(acts.newVersion(theatre, scorer, intime, level("TF09", 3)).late())
                .as("signed 40 days after the case")
                .isFalse();
    }

    @Test
    void onlyTheScorerOpensAVersionAndOthersLearnNothing() {
        SignedSheet first = signed();
        SignedIn director = theatre.organisation().join("Mirabel Osk", Role.DIRECTOR);
        SignedIn colleague = theatre.organisation().join("Ottilie Brannock", Role.SUPERVISOR);
        for (SignedIn who : List.of(theatre.trainee(), director, colleague)) {
            assertThatThrownBy(() -> acts.open(theatre, who, first.id())).isInstanceOf(NotFound.class);
            assertThatThrownBy(() -> acts.drop(theatre, who, first.id())).isInstanceOf(NotFound.class);
        }
        assertThat(acts.open(theatre, scorer, first.id())).isInstanceOf(Attempt.Done.class);
    }

    @Test
    void theReasonHasItsLengthAndASecondOneIsRefused() {
        SignedSheet first = signed();
        assertThat(refusals(first, "too short")).containsExactly("signoff.refusal.reason-short");
        assertThat(refusals(first, "é".repeat(501))).containsExactly("refusal.text.length");
        assertThat(refusals(first, "é".repeat(500))).isEmpty();
        assertThat(refusals(first, "é".repeat(500))).as("the same again").isEmpty();
        assertThat(refusals(first, "Another reason altogether.")).containsExactly("signoff.refusal.version-open");
    }

    @Test
    void theFormAsksForTheReasonAndLeadsToTheSheet() throws Exception {
        SignedSheet first = signed();
        String form = "/signed/" + first.id() + "/new-version";
        read(scorer, form).andExpect(content().string(containsString("Why a new version is needed")));
        mockMvc.perform(post(form).param("reason", "why").with(LogIn.as(scorer)).with(csrf()))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(allOf(containsString("at least 20 characters"), containsString(">why<"))));
        mockMvc.perform(post(form)
                        .param("reason", RecordFixture.REASON)
                        .with(LogIn.as(scorer))
                        .with(csrf()))
                .andExpect(redirectedUrl("/sheets/" + first.sheetId()));
        read(scorer, "/sheets/" + first.sheetId())
                .andExpect(content().string(containsString("You are writing version 2 of a signed sheet.")));
        read(scorer, "/to-score").andExpect(content().string(containsString("new version 2")));
        read(theatre.trainee(), "/signed/" + first.id())
                .andExpect(content()
                        .string(allOf(
                                containsString("Version 2 is being written by Ansel Verrin"),
                                not(containsString("Drop the new version")))));
        mockMvc.perform(post(form + "/drop").with(LogIn.as(scorer)).with(csrf()))
                .andExpect(redirectedUrl("/signed/" + first.id()));
        mockMvc.perform(get("/sheets/{id}", first.sheetId()).with(LogIn.as(scorer)))
                .andExpect(redirectedUrl("/sheets/" + first.sheetId() + "/signed"));
    }

    @Test
    void aDelegateIsNamedOnlyOnceTheScorerHasLeft() {
        SignedSheet first = signed();
        SignedIn director = theatre.organisation().join("Mirabel Osk", Role.DIRECTOR);
        SignedIn colleague = theatre.organisation().join("Ottilie Brannock", Role.SUPERVISOR);
        assertThat(theatre.organisation().in(() -> versions.delegates(director, first.id())))
                .as("the scorer is still there")
                .isEmpty();
        acts.open(theatre, scorer, first.id()).orThrow();
        acts.leave(theatre, scorer);

        assertThat(theatre.organisation().in(() -> versions.delegates(director, first.id())))
                .extracting(person -> person.id())
                .containsExactly(colleague.personId());
        SignedIn countersigner = theatre.organisation().join("Corin Aldersey", Role.SUPERVISOR);
        signatures
                .sign(theatre, countersigner, RecordEvent.COUNTERSIGNED, first, "")
                .orThrow();
        assertThatThrownBy(() -> acts.history(theatre, colleague, first.id())).isInstanceOf(NotFound.class);
        theatre.organisation()
                .in(() -> versions.nameDelegate(
                        director,
                        first.id(),
                        colleague.personId(),
                        RecordFixture.signature("Ansel Verrin has left the programme.")))
                .orThrow();

        assertThat(acts.history(theatre, colleague, first.id()).open())
                .as("what the scorer was writing is dropped")
                .isEmpty();
        SignedSheet second = acts.newVersion(theatre, colleague, first, level("TF09", 2));
        assertThat(SignedContent.read(second.content()).reviewed().replaces().basis())
                .isEqualTo(VersionBasis.DELEGATED);
        assertThat(second.signerName()).isEqualTo("Ottilie Brannock");
    }

    private List<String> refusals(SignedSheet signed, String reason) {
        return theatre.organisation()
                .in(() -> versions.open(scorer, signed.id(), reason))
                .fold(
                        sheet -> List.<String>of(),
                        reasons -> reasons.stream().map(one -> one.messageKey()).toList());
    }

    private ResultActions read(SignedIn who, String path) throws Exception {
        return mockMvc.perform(get(path).with(LogIn.as(who))).andExpect(status().isOk());
    }

    private SignedSheet signed() {
        return fixture.signed(theatre, ended());
    }

    private SignedSheet sign(UUID sheet) {
        return theatre.organisation()
                .in(() -> signing.signWithoutCredential(scorer, sheet).orThrow());
    }

    private Instant ended() {
        return clock.instant().minus(Duration.ofHours(3));
    }

    private static SheetChange level(String step, int level) {
        return new SheetChange.SetStep(step, new StepState.Scored(level));
    }

    private SignedSheet counting(SignedSheet signed) {
        return theatre.organisation()
                .in(() -> signedSheets.ofSheet(signed.sheetId()))
                .orElseThrow();
    }

    private List<SignedSheet> ofTrainee() {
        return theatre.organisation()
                .in(() -> signedSheets.ofTrainee(theatre.trainee().personId()));
    }

    private List<SignedSheet> knownAt(Instant then) {
        return theatre.organisation()
                .in(() -> signedSheets.ofTrainee(theatre.trainee().personId(), "TRAB_FORNIX", then));
    }

    private int operated(SignedSheet signed) {
        return theatre.organisation().in(() -> cases.operated(signed.traineeId(), signed.procedureCode()));
    }
}
