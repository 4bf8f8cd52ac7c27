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
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.Cases;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.people.People;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;

/** Records two people take out of all numbers. */
@ScrublineTest
class VoidTests {

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
    SignedSheets signedSheets;

    @Autowired
    SignedRecords records;

    @Autowired
    Cases cases;

    @Autowired
    People people;

    @Autowired
    Ledger ledger;

    @Autowired
    ScrublineClock clock;

    Theatre theatre;
    SignedIn scorer;
    SignedIn director;
    SignedSheet signed;

    @BeforeEach
    void signASheet() {
        theatre = sheetFixture.theatre(organisations);
        scorer = theatre.supervisor();
        director = theatre.organisation().join("Mirabel Osk", Role.DIRECTOR);
        signed = fixture.signed(theatre, clock.instant().minus(Duration.ofHours(3)));
    }

    @Test
    void g13AVoidRecordIsOutOfEveryNumberAndStaysReadableWithItsReason() throws Exception {
        assertThat(operated()).isEqualTo(1);
        acts.askVoid(theatre, scorer, signed.id()).orThrow();
        assertThat(ofTrainee()).as("asked is not void").containsExactly(signed);
        acts.decideVoid(theatre, director, signed.id(), true).orThrow();

        assertThat(ofTrainee()).isEmpty();
        assertThat(operated()).isZero();
        assertThat(theatre.organisation().in(() -> signedSheets.ofSheet(signed.sheetId())))
                .isEmpty();
        assertThat(theatre.organisation().in(() -> records.about(signed.traineeId())))
                .isEmpty();
        for (SignedIn who : List.of(theatre.trainee(), scorer, director)) {
            page(who, "/signed/" + signed.id())
                    .andExpect(content()
                            .string(allOf(
                                    containsString("Version 1 of 2; the record is void."),
                                    containsString("wrong trainee: This case was another trainee’s case."),
                                    containsString("Version 2: void"),
                                    containsString("I confirm that this record is void"),
                                    containsString("Mirabel Osk</span>, <span>programme director"),
                                    not(containsString("Open a new version")))));
        }
        page(theatre.trainee(), "/feedback")
                .andExpect(content()
                        .string(allOf(
                                containsString("Out of all numbers and counts."),
                                containsString("/signed/" + signed.id()))));
        page(scorer, "/signed").andExpect(content().string(containsString("/signed/" + signed.id())));
    }

    @Test
    void neitherTheOneWhoAskedNorTheTraineeNorAnyoneElseConfirms() {
        SignedIn colleague = theatre.organisation().join("Ottilie Brannock", Role.SUPERVISOR);
        acts.askVoid(theatre, scorer, signed.id()).orThrow();

        assertThat(keys(acts.decideVoid(theatre, scorer, signed.id(), true)))
                .containsExactly("signoff.refusal.void-second");
        for (SignedIn who : List.of(theatre.trainee(), colleague)) {
            assertThatThrownBy(() -> acts.decideVoid(theatre, who, signed.id(), true))
                    .isInstanceOf(NotFound.class);
            assertThatThrownBy(() -> acts.askVoid(theatre, who, signed.id())).isInstanceOf(NotFound.class);
        }
        assertThat(ofTrainee()).containsExactly(signed);
    }

    @Test
    void aDirectorsRequestIsConfirmedByTheScorerOrAnotherDirector() {
        acts.askVoid(theatre, director, signed.id()).orThrow();
        assertThat(keys(acts.decideVoid(theatre, director, signed.id(), true)))
                .containsExactly("signoff.refusal.void-second");
        acts.decideVoid(theatre, scorer, signed.id(), false).orThrow();
        acts.askVoid(theatre, director, signed.id()).orThrow();
        SignedIn second = theatre.organisation().join("Tobias Renn", Role.DIRECTOR);
        Statement decided = acts.decideVoid(theatre, second, signed.id(), true).orThrow();

        assertThat(decided.content().signer().name()).isEqualTo("Tobias Renn");
        assertThat(decided.content().signer().role()).isEqualTo("DIRECTOR");
        assertThat(ofTrainee()).isEmpty();
    }

    @Test
    void aDirectorWithADeclaredConflictWithTheTraineeDoesNotDecide() {
        acts.askVoid(theatre, scorer, signed.id()).orThrow();
        theatre.organisation().in(() -> {
            people.declareConflict(director.personId(), signed.traineeId());
            return signed;
        });
        assertThat(keys(acts.decideVoid(theatre, director, signed.id(), true)))
                .containsExactly("signoff.refusal.void-second");
    }

    @Test
    void declinedTheRecordCountsAsBeforeAndBothReasonsStay() throws Exception {
        acts.askVoid(theatre, scorer, signed.id()).orThrow();
        acts.decideVoid(theatre, director, signed.id(), false).orThrow();

        assertThat(ofTrainee()).containsExactly(signed);
        page(theatre.trainee(), "/signed/" + signed.id())
                .andExpect(content()
                        .string(allOf(
                                containsString("asked for this record to be void: wrong trainee"),
                                containsString("I looked at the theatre list of that day."),
                                not(containsString("the record is void")))));
        assertThat(keys(acts.decideVoid(theatre, director, signed.id(), true)))
                .containsExactly("signoff.refusal.void-decided");
    }

    @Test
    void aVersionBeingWrittenWaitsForTheDecisionAndGoesWithTheRecord() {
        UUID sheet = acts.open(theatre, scorer, signed.id()).orThrow();
        acts.askVoid(theatre, director, signed.id()).orThrow();
        assertThat(theatre.organisation()
                        .in(() -> fixture.preview(theatre, sheet))
                        .obstacles())
                .extracting(Refusal::messageKey)
                .containsExactly("signoff.refusal.void-waiting");

        acts.decideVoid(theatre, scorer, signed.id(), true).orThrow();
        assertThat(acts.history(theatre, scorer, signed.id()).open()).isEmpty();
        assertThat(keys(acts.open(theatre, scorer, signed.id()))).containsExactly("signoff.refusal.void");
        assertThat(keys(acts.askVoid(theatre, scorer, signed.id()))).containsExactly("signoff.refusal.void");
        assertThat(keys(acts.contest(theatre, theatre.trainee(), signed.id()))).containsExactly("signoff.refusal.void");
    }

    @Test
    void theStatementsAreCanonicalHashedAndInTheLedger() {
        Statement asked = acts.askVoid(theatre, scorer, signed.id()).orThrow();
        Statement decided =
                acts.decideVoid(theatre, director, signed.id(), true).orThrow();

        for (Statement statement : List.of(asked, decided)) {
            assertThat(CanonicalJson.sha256(CanonicalJson.canonical(statement.json())))
                    .isEqualTo(statement.hash());
            assertThat(statement.content().record().contentHash()).isEqualTo(signed.contentHash());
            assertThat(statement.content().signedZone()).hasToString("Europe/London");
        }
        assertThat(decided.content().answers()).isEqualTo(asked.reference());
        assertThat(theatre.organisation().in(() -> ledger.find(LeafKind.VOID_REQUEST, asked.id())))
                .isPresent();
        assertThat(theatre.organisation().in(() -> ledger.find(LeafKind.VOID_DECISION, decided.id())))
                .isPresent();
        assertThat(acts.history(theatre, scorer, signed.id()).voided().orElseThrow())
                .isEqualTo(new VoidFile(asked, Optional.of(decided)));
    }

    @Test
    void thePagesAskForGroundReasonAndPasswordAndShowWhatIsMissing() throws Exception {
        String form = "/signed/" + signed.id() + "/void";
        page(scorer, form).andExpect(content().string(containsString("I ask for this record to be void")));
        mockMvc.perform(post(form)
                        .param("reason", "This case was another trainee’s case.")
                        .param("password", TestOrganisations.PASSWORD)
                        .with(LogIn.as(scorer))
                        .with(csrf()))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content()
                        .string(allOf(
                                containsString("Choose what is wrong with the record."),
                                containsString("another trainee’s case."))));
        mockMvc.perform(post(form)
                        .param("ground", "WRONG_TRAINEE")
                        .param("reason", "This case was another trainee’s case.")
                        .param("password", "not the password")
                        .with(LogIn.as(scorer))
                        .with(csrf()))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("That is not your password")));
        assertThat(acts.history(theatre, scorer, signed.id()).voids()).isEmpty();
        mockMvc.perform(post(form)
                        .param("ground", "WRONG_TRAINEE")
                        .param("reason", "This case was another trainee’s case.")
                        .param("password", TestOrganisations.PASSWORD)
                        .with(LogIn.as(scorer))
                        .with(csrf()))
                .andExpect(redirectedUrl("/signed/" + signed.id()));

        String decision = form + "/decision";
        page(director, "/contests").andExpect(content().string(containsString(decision)));
        page(director, decision)
                .andExpect(content()
                        .string(allOf(
                                containsString("I confirm that this record is void"),
                                containsString("wrong trainee. This case was another trainee’s case."))));
        mockMvc.perform(post(decision)
                        .param("password", TestOrganisations.PASSWORD)
                        .with(LogIn.as(director))
                        .with(csrf()))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Choose one of the two buttons.")));
        mockMvc.perform(post(decision)
                        .param("act", "VOID_CONFIRMED")
                        .param("password", TestOrganisations.PASSWORD)
                        .with(LogIn.as(director))
                        .with(csrf()))
                .andExpect(redirectedUrl("/signed/" + signed.id()));
        assertThat(ofTrainee()).isEmpty();
        mockMvc.perform(get(decision).with(LogIn.as(director))).andExpect(redirectedUrl("/signed/" + signed.id()));
    }

    private ResultActions page(SignedIn who, String path) throws Exception {
        return mockMvc.perform(get(path).with(LogIn.as(who))).andExpect(status().isOk());
    }

    static List<String> keys(Attempt<?> attempt) {
        return attempt.fold(
                done -> List.<String>of(),
                reasons -> reasons.stream().map(Refusal::messageKey).toList());
    }

    private List<SignedSheet> ofTrainee() {
        return theatre.organisation().in(() -> signedSheets.ofTrainee(signed.traineeId()));
    }

    private int operated() {
        return theatre.organisation().in(() -> cases.operated(signed.traineeId(), signed.procedureCode()));
    }
}
