package org.scrubline.signoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.SheetChange;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.SheetState;
import org.scrubline.casework.StepState;
import org.scrubline.people.People;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.PublishedRubric;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Rubrics;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.transaction.support.TransactionTemplate;

/** Signing as the signer meets it. Names beginning with a number follow the project's table of signing events. */
@ScrublineTest
class SigningTests {

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SheetFixture sheetFixture;

    @Autowired
    SigningFixture fixture;

    @Autowired
    SignedSheets signedSheets;

    @Autowired
    Rubrics rubrics;

    @Autowired
    People people;

    @Autowired
    Clock clock;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    Theatre theatre;

    @BeforeEach
    void openATheatre() {
        theatre = sheetFixture.theatre(organisations);
    }

    @Test
    void g1SigningAsksForThePasswordEvenThoughTheSignerIsLoggedIn() throws Exception {
        UUID sheet = fixture.complete(theatre, ended());
        review(sheet)
                .andExpect(status().isOk())
                .andExpect(content()
                        .string(allOf(
                                containsString("type=\"password\""),
                                containsString("I observed and scored this case"),
                                containsString("Ansel Verrin"))));

        sign(sheet, hash(sheet), "").andExpect(status().isUnprocessableContent());
        assertUnsigned(sheet);
        SignedSheet signed = signAndRead(sheet);
        assertThat(signed.signerName()).isEqualTo("Ansel Verrin");
        assertThat(signed.signerRole()).isEqualTo("SUPERVISOR");
        assertThat(signed.meaning()).isEqualTo("signoff.meaning.observed");
        assertThat(fixture.read(theatre, sheet).state()).isEqualTo(SheetState.SIGNED);
    }

    @Test
    void g1AfterFiveWrongPasswordsEvenTheRightOneWaitsAndTheDraftIsKept() throws Exception {
        UUID sheet = fixture.complete(theatre, ended());
        for (int i = 0; i < 5; i++) {
            sign(sheet, hash(sheet), "not the password")
                    .andExpect(status().isUnprocessableContent())
                    .andExpect(content().string(containsString("That is not your password")));
        }
        sign(sheet, hash(sheet), TestOrganisations.PASSWORD)
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Too many wrong passwords")));
        assertUnsigned(sheet);
        assertThat(fixture.read(theatre, sheet).step("TF01")).isEqualTo(new StepState.Scored(4));
    }

    @Test
    void g2TwoBlankStepsAreNamedAndSigningIsRefused() throws Exception {
        UUID sheet = fixture.complete(theatre, ended());
        fixture.change(theatre, sheet, new SheetChange.SetStep("TF03", StepState.blank()));
        fixture.change(theatre, sheet, new SheetChange.SetStep("TF09", StepState.blank()));
        Rubric rubric = theatre.organisation()
                .in(() -> rubrics.current(Procedures.TRAB_FORNIX))
                .rubric();

        sign(sheet, hash(sheet), TestOrganisations.PASSWORD)
                .andExpect(status().isUnprocessableContent())
                .andExpect(content()
                        .string(allOf(
                                containsString(rubric.step("TF03").name() + ": nothing said yet"),
                                containsString(rubric.step("TF09").name() + ": nothing said yet"),
                                containsString("/sheets/" + sheet + "#step-TF03"),
                                containsString("The 2 untouched steps were not seen"))));
        assertUnsigned(sheet);
    }

    @Test
    void g2OneTapSaysTheUntouchedStepsWereNotSeenAndThenItCanBeSigned() throws Exception {
        UUID sheet = fixture.blank(theatre, ended());
        fixture.confirmRole(theatre, sheet);
        fixture.change(theatre, sheet, new SheetChange.SetStep("TF01", new StepState.Scored(5)));

        mockMvc.perform(post("/sheets/{id}/review/untouched", sheet)
                        .param(
                                "version",
                                String.valueOf(fixture.read(theatre, sheet).lockVersion()))
                        .with(LogIn.as(theatre.supervisor()))
                        .with(csrf()))
                .andExpect(redirectedUrl("/sheets/" + sheet + "/review"));
        assertThat(fixture.read(theatre, sheet).step("TF09")).isEqualTo(new StepState.NotSeen());
        assertThat(fixture.read(theatre, sheet).step("TF01")).isEqualTo(new StepState.Scored(5));
        assertThat(signAndRead(sheet).steps())
                .filteredOn(step -> step.stepCode().equals("TF09"))
                .extracting(SignedSheet.SignedStep::state)
                .containsExactly(new StepState.NotSeen());
    }

    @Test
    void g2TheTapOnAnOldPageChangesNothing() throws Exception {
        UUID sheet = fixture.blank(theatre, ended());
        int old = fixture.read(theatre, sheet).lockVersion();
        fixture.change(theatre, sheet, new SheetChange.SetStep("TF01", new StepState.Scored(5)));

        mockMvc.perform(post("/sheets/{id}/review/untouched", sheet)
                        .param("version", String.valueOf(old))
                        .with(LogIn.as(theatre.supervisor()))
                        .with(csrf()))
                .andExpect(status().isConflict());
        assertThat(fixture.read(theatre, sheet).step("TF09")).isEqualTo(StepState.blank());
    }

    @Test
    void theRoleMustBeConfirmedFirst() throws Exception {
        UUID sheet = fixture.blank(theatre, ended());
        fixture.change(theatre, sheet, new SheetChange.SetBlankSteps(null, new StepState.NotSeen()));
        review(sheet).andExpect(content().string(containsString("Say what the trainee did and where you were.")));
        sign(sheet, hash(sheet), TestOrganisations.PASSWORD).andExpect(status().isUnprocessableContent());
        assertUnsigned(sheet);

        fixture.confirmRole(theatre, sheet);
        signAndRead(sheet);
    }

    @Test
    void g3ARubricPublishedMeanwhileLeavesTheSheetOnItsOwnVersion() throws Exception {
        UUID sheet = fixture.complete(theatre, ended());
        PublishedRubric before = theatre.organisation().in(() -> rubrics.current(Procedures.TRAB_FORNIX));
        Rubric shipped = before.rubric();
        sheetFixture.publish(
                theatre, new Rubric(shipped.procedure(), "9.0", "Another title", shipped.family(), shipped.steps()));

        SignedSheet signed = signAndRead(sheet);
        SheetContent.RubricUsed used =
                SignedContent.read(signed.content()).reviewed().rubric();
        assertThat(signed.rubricVersionId()).isEqualTo(before.id());
        assertThat(used.version()).isEqualTo(shipped.version());
        assertThat(used.contentHash()).isEqualTo(before.contentHash());
    }

    @Test
    void g5AfterSigningEveryPostThatWouldChangeTheSheetIsAConflict() throws Exception {
        UUID sheet = fixture.complete(theatre, ended());
        int version = fixture.read(theatre, sheet).lockVersion();
        SignedSheet signed = signAndRead(sheet);

        for (String path : List.of("", "/review/untouched")) {
            mockMvc.perform(post("/sheets/" + sheet + path)
                            .param("version", String.valueOf(version))
                            .param("step.TF01", "1")
                            .with(LogIn.as(theatre.supervisor()))
                            .with(csrf()))
                    .andExpect(status().isConflict())
                    .andExpect(content().string(containsString("/sheets/" + sheet + "/signed")));
        }
        assertThat(fixture.read(theatre, sheet).step("TF01")).isEqualTo(new StepState.Scored(4));
        mockMvc.perform(get("/sheets/{id}", sheet).with(LogIn.as(theatre.supervisor())))
                .andExpect(redirectedUrl("/sheets/" + sheet + "/signed"));
        mockMvc.perform(get("/sheets/{id}/signed", sheet).with(LogIn.as(theatre.supervisor())))
                .andExpect(redirectedUrl("/signed/" + signed.id()));
    }

    @Test
    void aSheetThatMovedOnIsShownInBothVersionsAndNotSigned() throws Exception {
        UUID sheet = fixture.complete(theatre, ended());
        SigningPreview reviewed = fixture.preview(theatre, sheet);
        fixture.change(theatre, sheet, new SheetChange.SetStep("TF09", new StepState.Scored(2)));
        fixture.change(theatre, sheet, new SheetChange.SetFeedback("Steady hands.", ""));
        Rubric rubric = theatre.organisation()
                .in(() -> rubrics.current(Procedures.TRAB_FORNIX))
                .rubric();

        mockMvc.perform(post("/sheets/{id}/sign", sheet)
                        .param("hash", reviewed.contentHash())
                        .param("reviewed", reviewed.content())
                        .param("password", TestOrganisations.PASSWORD)
                        .with(LogIn.as(theatre.supervisor()))
                        .with(csrf()))
                .andExpect(status().isConflict())
                .andExpect(content()
                        .string(allOf(
                                containsString(
                                        "4 " + escaped(rubric.step("TF09").sentence(4))),
                                containsString(
                                        "2 " + escaped(rubric.step("TF09").sentence(2))),
                                containsString("Steady hands."),
                                containsString("/sheets/" + sheet + "/review"),
                                not(containsString(rubric.step("TF01").name())))));
        assertUnsigned(sheet);
    }

    @Test
    void aChangeTakenBackLeavesTheReviewedContentStanding() throws Exception {
        UUID sheet = fixture.complete(theatre, ended());
        String reviewed = hash(sheet);
        fixture.change(theatre, sheet, new SheetChange.SetStep("TF09", new StepState.Scored(2)));
        fixture.change(theatre, sheet, new SheetChange.SetStep("TF09", new StepState.Scored(4)));

        sign(sheet, reviewed, TestOrganisations.PASSWORD).andExpect(status().is3xxRedirection());
    }

    @Test
    void aHashThatNothingHadIsAConflict() throws Exception {
        UUID sheet = fixture.complete(theatre, ended());
        sign(sheet, "0".repeat(64), TestOrganisations.PASSWORD).andExpect(status().isConflict());
        assertUnsigned(sheet);
    }

    @Test
    void sendingTheSameSignatureAgainAnswersTheFirst() throws Exception {
        UUID sheet = fixture.complete(theatre, ended());
        String hash = hash(sheet);
        SignedSheet first = signAndRead(sheet);

        sign(sheet, hash, TestOrganisations.PASSWORD).andExpect(redirectedUrl("/signed/" + first.id()));
        sign(sheet, "0".repeat(64), TestOrganisations.PASSWORD).andExpect(status().isConflict());
        assertThat(rows(sheet)).isEqualTo(1);
    }

    @Test
    void aRoleTakenAwayBetweenReviewAndSigningForbidsIt() throws Exception {
        UUID sheet = fixture.complete(theatre, ended());
        String hash = hash(sheet);
        endRole();

        sign(sheet, hash, TestOrganisations.PASSWORD)
                .andExpect(status().isForbidden())
                .andExpect(content().string(containsString("You are no supervisor of this programme now")));
        assertUnsigned(sheet);

        theatre.organisation().in(() -> {
            people.grant(
                    theatre.organisation().programme().id(),
                    theatre.supervisor().personId(),
                    Role.SUPERVISOR);
            return true;
        });
        sign(sheet, hash, TestOrganisations.PASSWORD).andExpect(status().is3xxRedirection());
    }

    @Test
    void aDeclaredConflictForbidsIt() throws Exception {
        UUID sheet = fixture.complete(theatre, ended());
        String hash = hash(sheet);
        SignedIn other = theatre.organisation().join("Ilse Tavener", Role.TRAINEE);
        declareConflict(other);
        assertThat(fixture.preview(theatre, sheet).obstacles())
                .as("a conflict with somebody else bars nothing here")
                .isEmpty();

        declareConflict(theatre.trainee());
        sign(sheet, hash, TestOrganisations.PASSWORD)
                .andExpect(status().isForbidden())
                .andExpect(content().string(containsString("A conflict of interest")));
        assertUnsigned(sheet);
    }

    @Test
    void anotherPersonsSheetIsNotThere() throws Exception {
        UUID sheet = fixture.complete(theatre, ended());
        String hash = hash(sheet);
        SignedIn colleague = theatre.organisation().join("Ottilie Brannock", Role.SUPERVISOR);
        for (SignedIn who : List.of(colleague, theatre.trainee())) {
            mockMvc.perform(get("/sheets/{id}/review", sheet).with(LogIn.as(who)))
                    .andExpect(status().isNotFound());
            mockMvc.perform(post("/sheets/{id}/sign", sheet)
                            .param("hash", hash)
                            .param("password", TestOrganisations.PASSWORD)
                            .with(LogIn.as(who))
                            .with(csrf()))
                    .andExpect(status().isNotFound());
        }
        assertUnsigned(sheet);
    }

    private Instant ended() {
        return clock.instant().minus(Duration.ofHours(2));
    }

    private String hash(UUID sheet) {
        return fixture.preview(theatre, sheet).contentHash();
    }

    private ResultActions review(UUID sheet) throws Exception {
        return mockMvc.perform(get("/sheets/{id}/review", sheet).with(LogIn.as(theatre.supervisor())));
    }

    private ResultActions sign(UUID sheet, String hash, String password) throws Exception {
        return mockMvc.perform(post("/sheets/{id}/sign", sheet)
                .param("hash", hash)
                .param("password", password)
                .with(LogIn.as(theatre.supervisor()))
                .with(csrf()));
    }

    private SignedSheet signAndRead(UUID sheet) throws Exception {
        sign(sheet, hash(sheet), TestOrganisations.PASSWORD).andExpect(status().is3xxRedirection());
        return theatre.organisation().in(() -> signedSheets.ofSheet(sheet)).orElseThrow();
    }

    private void assertUnsigned(UUID sheet) {
        assertThat(rows(sheet)).isZero();
        assertThat(fixture.read(theatre, sheet).state()).isEqualTo(SheetState.OPEN);
    }

    private int rows(UUID sheet) {
        return theatre.organisation()
                .in(() -> transaction.execute(
                        status -> jdbc.sql("select count(*) from signed_sheet where sheet_id = :sheet")
                                .param("sheet", sheet)
                                .query(Integer.class)
                                .single()));
    }

    private void declareConflict(SignedIn other) {
        theatre.organisation().in(() -> {
            people.declareConflict(other.personId(), theatre.supervisor().personId());
            return true;
        });
    }

    private void endRole() {
        theatre.organisation()
                .in(() -> transaction.execute(
                        status -> jdbc.sql("update programme_role set ended_at = now() where person_id = :person")
                                .param("person", theatre.supervisor().personId())
                                .update()));
    }

    private static String escaped(String text) {
        return org.springframework.web.util.HtmlUtils.htmlEscape(text, "UTF-8");
    }
}
