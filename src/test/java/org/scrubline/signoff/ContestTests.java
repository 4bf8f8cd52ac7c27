package org.scrubline.signoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.scrubline.signoff.VoidTests.keys;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrlPattern;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.SheetChange;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.StepState;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.people.People;
import org.scrubline.people.SettingKey;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;

/** A trainee contests a score; the scorer replies, a director names a reviewer, the reviewer decides. */
@ScrublineTest
class ContestTests {

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
    VersionFixture versions;

    @Autowired
    SignedSheets signedSheets;

    @Autowired
    Contests contests;

    @Autowired
    People people;

    @Autowired
    Ledger ledger;

    @Autowired
    ScrublineClock clock;

    Theatre theatre;
    SignedIn trainee;
    SignedIn scorer;
    SignedIn director;
    SignedIn reviewer;
    SignedSheet signed;

    @BeforeEach
    void signASheet() {
        theatre = sheetFixture.theatre(organisations);
        trainee = theatre.trainee();
        scorer = theatre.supervisor();
        director = theatre.organisation().join("Mirabel Osk", Role.DIRECTOR);
        reviewer = theatre.organisation().join("Ottilie Brannock", Role.SUPERVISOR);
        signed = fixture.signed(theatre, clock.instant().minus(Duration.ofHours(3)));
    }

    @Test
    void upheldTheReviewerSignsTheNextVersionAndTheScorerNoMore() {
        UUID contest = acts.inReview(theatre, signed.id(), director, reviewer);
        acts.open(theatre, scorer, signed.id()).orThrow();
        Statement upheld = acts.decide(theatre, reviewer, contest, true).orThrow();

        assertThat(marks()).isEqualTo(new RecordMarks(false, ContestOutcome.UPHELD, true));
        assertThat(acts.history(theatre, scorer, signed.id()).open())
                .as("what the scorer was writing")
                .isEmpty();
        assertThatThrownBy(() -> acts.open(theatre, scorer, signed.id())).isInstanceOf(NotFound.class);
        SignedSheet second =
                acts.newVersion(theatre, reviewer, signed, new SheetChange.SetStep("TF09", new StepState.Scored(5)));
        SheetContent content = SignedContent.read(second.content()).reviewed();
        assertThat(second.signerName()).isEqualTo("Ottilie Brannock");
        assertThat(content.replaces().basis()).isEqualTo(VersionBasis.CONTEST_UPHELD);
        assertThat(content.replaces().grantedBy()).isEqualTo(upheld.id());
        assertThat(content.signer().meaning())
                .isEqualTo("I reviewed this record after a contest and sign this new version of it");
        assertThat(theatre.organisation().in(() -> signedSheets.ofTrainee(trainee.personId())))
                .containsExactly(second);
        assertThat(acts.history(theatre, scorer, signed.id()).versions())
                .as("the scorer still reads both")
                .extracting(SignedSheet::id)
                .containsExactly(signed.id(), second.id());
    }

    @Test
    void notUpheldTheScoreStandsAndTheOutcomeStaysVisible() throws Exception {
        UUID contest = acts.inReview(theatre, signed.id(), director, reviewer);
        acts.decide(theatre, reviewer, contest, false).orThrow();

        assertThat(marks()).isEqualTo(new RecordMarks(false, ContestOutcome.NOT_UPHELD, true));
        assertThatThrownBy(() -> acts.open(theatre, reviewer, signed.id())).isInstanceOf(NotFound.class);
        page(trainee, "/contests/" + contest)
                .andExpect(content()
                        .string(allOf(
                                containsString("not upheld: the score stands"),
                                containsString("I reviewed this record and do not uphold the contest"),
                                containsString("The video of the case settles this step."),
                                containsString("Ottilie Brannock</span>, <span>supervisor"))));
        page(trainee, "/feedback").andExpect(content().string(containsString("contest not upheld")));
        assertThat(keys(acts.contest(theatre, trainee, signed.id()))).containsExactly("signoff.refusal.contest-once");
    }

    @Test
    void whileItIsOpenTheScoreCountsWithItsMarkInEveryList() throws Exception {
        acts.contest(theatre, trainee, signed.id()).orThrow();

        assertThat(marks()).isEqualTo(new RecordMarks(true, null, true));
        page(trainee, "/feedback").andExpect(content().string(containsString(">contested<")));
        page(scorer, "/signed").andExpect(content().string(containsString(">contested<")));
        page(director, "/signed/" + signed.id()).andExpect(content().string(containsString(">contested<")));
        page(trainee, "/progress").andExpect(content().string(containsString("contested sheet, counted")));
        page(trainee, "/progress/" + trainee.personId() + "/steps/TF09?procedure=TRAB_FORNIX")
                .andExpect(content().string(containsString(">contested<")));
        page(director, "/cohort?procedure=TRAB_FORNIX&show=contested")
                .andExpect(
                        content().string(allOf(containsString("contested sheet<"), containsString("Fenna Hallinor"))));
    }

    @Test
    void theTraineeTakesItBackAndEveryStatementIsSignedAndInTheLedger() {
        Statement opened = acts.contest(theatre, trainee, signed.id()).orThrow();
        Statement ended = acts.withdraw(theatre, trainee, opened.id()).orThrow();

        assertThat(marks()).isEqualTo(new RecordMarks(false, ContestOutcome.WITHDRAWN, true));
        assertThat(opened.content().steps()).containsExactly("TF09");
        assertThat(opened.content().record().contentHash()).isEqualTo(signed.contentHash());
        assertThat(opened.content().signer().role()).isEqualTo("TRAINEE");
        assertThat(ended.content().answers()).isEqualTo(opened.reference());
        assertThat(theatre.organisation().in(() -> ledger.find(LeafKind.CONTEST, opened.id())))
                .isPresent();
        assertThat(theatre.organisation().in(() -> ledger.find(LeafKind.CONTEST_STEP, ended.id())))
                .isPresent();
        assertThat(keys(acts.reply(theatre, scorer, opened.id()))).containsExactly("signoff.refusal.contest-ended");
    }

    @Test
    void onlyTheTraineeContestsAndOnlyForTwentyEightDays() {
        for (SignedIn who : List.of(scorer, director, reviewer)) {
            assertThatThrownBy(() -> acts.contest(theatre, who, signed.id())).isInstanceOf(NotFound.class);
        }
        assertThat(clock.at(
                        signed.receivedAt().plus(Duration.ofDays(28)).plusMillis(1),
                        () -> keys(acts.contest(theatre, trainee, signed.id()))))
                .containsExactly("signoff.refusal.contest-late");
        assertThat(clock.at(
                        signed.receivedAt().plus(Duration.ofDays(28)),
                        () -> keys(acts.contest(theatre, trainee, signed.id()))))
                .isEmpty();
    }

    @Test
    void theTermsAreThoseOfTheProgramme() {
        versions.set(theatre, SettingKey.CONTEST_WITHIN, 10);
        versions.set(theatre, SettingKey.CONTEST_TERM, 20);
        versions.set(theatre, SettingKey.CONTEST_REPLY, 3);
        assertThat(clock.at(
                        signed.receivedAt().plus(Duration.ofDays(10)).plusMillis(1),
                        () -> keys(acts.contest(theatre, trainee, signed.id()))))
                .containsExactly("signoff.refusal.contest-late");
        Statement opened = acts.contest(theatre, trainee, signed.id()).orThrow();
        Instant at = opened.content().signedAt();
        assertThat(acts.read(theatre, director, opened.id()).dueAt()).isEqualTo(at.plus(Duration.ofDays(20)));
        assertThat(keys(clock.at(
                        at.plus(Duration.ofDays(3)),
                        () -> acts.nameReviewer(theatre, director, opened.id(), reviewer))))
                .containsExactly("signoff.refusal.reply-first");
        assertThat(keys(clock.at(
                        at.plus(Duration.ofDays(3)).plusMillis(1),
                        () -> acts.nameReviewer(theatre, director, opened.id(), reviewer))))
                .isEmpty();
    }

    @Test
    void aReasonIsNeededAndOnlyStepsOfTheSheetCanBeNamed() {
        assertThat(keys(theatre.organisation()
                        .in(() ->
                                contests.open(trainee, signed.id(), List.of(), RecordFixture.signature("too short")))))
                .containsExactly("signoff.refusal.reason-short");
        assertThat(keys(theatre.organisation()
                        .in(() -> contests.open(
                                trainee,
                                signed.id(),
                                List.of("XX99"),
                                RecordFixture.signature("I did this step alone, start to finish.")))))
                .containsExactly("signoff.refusal.steps");
        assertThat(keys(theatre.organisation()
                        .in(() -> contests.open(
                                trainee,
                                signed.id(),
                                List.of(),
                                Versions.Signature.byPassword("I did this step alone, start to finish.", "wrong")))))
                .containsExactly("refusal.password.wrong");
    }

    @Test
    void theReviewerHasNoPartAndNoConflictAndIsNotTheOneWhoNames() {
        UUID contest = acts.contest(theatre, trainee, signed.id()).orThrow().id();
        acts.reply(theatre, scorer, contest).orThrow();
        SignedIn close = theatre.organisation().join("Corin Vale", Role.SUPERVISOR);
        theatre.organisation().in(() -> {
            people.declareConflict(close.personId(), trainee.personId());
            people.grant(theatre.organisation().programme().id(), director.personId(), Role.SUPERVISOR);
            return contest;
        });
        SignedIn both = theatre.organisation().now(director.personId());

        assertThat(theatre.organisation().in(() -> contests.reviewers(both, contest)))
                .extracting(person -> person.id())
                .containsExactly(reviewer.personId());
        for (SignedIn who : List.of(close, scorer, trainee, both)) {
            assertThat(keys(acts.nameReviewer(theatre, both, contest, who)))
                    .as(who.printedName())
                    .containsExactly("signoff.refusal.reviewer-choice");
        }
        assertThatThrownBy(() -> acts.nameReviewer(theatre, scorer, contest, reviewer))
                .isInstanceOf(NotFound.class);
        assertThat(keys(acts.nameReviewer(theatre, both, contest, reviewer))).isEmpty();
    }

    @Test
    void theSupervisorRepliesFirstForSevenDays() {
        UUID contest = acts.contest(theatre, trainee, signed.id()).orThrow().id();
        assertThat(keys(acts.nameReviewer(theatre, director, contest, reviewer)))
                .containsExactly("signoff.refusal.reply-first");
        assertThat(clock.at(
                        clock.instant().plus(Duration.ofDays(8)),
                        () -> keys(acts.nameReviewer(theatre, director, contest, reviewer))))
                .isEmpty();
        assertThat(keys(acts.reply(theatre, scorer, contest))).containsExactly("signoff.refusal.replied");
    }

    @Test
    void aDirectorWhoScoredLeavesTheNamingToAnother() {
        theatre.organisation().in(() -> {
            people.grant(theatre.organisation().programme().id(), scorer.personId(), Role.DIRECTOR);
            return signed;
        });
        SignedIn both = theatre.organisation().now(scorer.personId());
        UUID contest = acts.contest(theatre, trainee, signed.id()).orThrow().id();
        acts.reply(theatre, both, contest).orThrow();

        assertThat(keys(acts.nameReviewer(theatre, both, contest, reviewer)))
                .containsExactly("signoff.refusal.own-score");
        assertThat(keys(acts.nameReviewer(theatre, director, contest, reviewer)))
                .isEmpty();
    }

    @Test
    void onlyTheReviewerDecidesAndNotAfterAConflictWasDeclared() {
        UUID contest = acts.inReview(theatre, signed.id(), director, reviewer);
        for (SignedIn who : List.of(trainee, scorer, director)) {
            assertThatThrownBy(() -> acts.decide(theatre, who, contest, true)).isInstanceOf(NotFound.class);
        }
        theatre.organisation().in(() -> {
            people.declareConflict(reviewer.personId(), trainee.personId());
            return contest;
        });
        assertThat(keys(acts.decide(theatre, reviewer, contest, true))).containsExactly("signoff.refusal.reviewer");
    }

    @Test
    void theReviewerReadsThatOneRecordAndNobodyElseDoes() throws Exception {
        SignedSheet other = fixture.signed(theatre, clock.instant().minus(Duration.ofHours(5)));
        SignedIn second = theatre.organisation().join("Corin Aldersey", Role.SUPERVISOR);
        for (SignedSheet record : List.of(signed, other)) {
            versions.sign(theatre, second, RecordEvent.COUNTERSIGNED, record, "")
                    .orThrow();
        }
        assertThatThrownBy(() -> acts.history(theatre, reviewer, signed.id())).isInstanceOf(NotFound.class);
        UUID contest = acts.inReview(theatre, signed.id(), director, reviewer);

        page(reviewer, "/signed/" + signed.id());
        page(reviewer, "/contests").andExpect(content().string(containsString("Waiting for you")));
        page(reviewer, "/contests/" + contest).andExpect(content().string(containsString("I held the flap")));
        mockMvc.perform(get("/signed/{id}", other.id()).with(LogIn.as(reviewer)))
                .andExpect(status().isNotFound());
        SignedIn stranger = theatre.organisation().join("Ilse Tavener", Role.SUPERVISOR);
        mockMvc.perform(get("/contests/{id}", contest).with(LogIn.as(stranger))).andExpect(status().isNotFound());
    }

    @Test
    void theListShowsWhatIsLeftAndWhatIsOverdue() throws Exception {
        page(trainee, "/contests").andExpect(content().string(containsString("No contests")));
        acts.contest(theatre, trainee, signed.id()).orThrow();
        page(director, "/contests")
                .andExpect(content()
                        .string(allOf(
                                containsString("29 days left"), containsString("waiting for the supervisor’s reply"))));
        clock.at(clock.instant().plus(Duration.ofDays(33)), () -> {
            try {
                return page(director, "/contests")
                        .andExpect(content()
                                .string(allOf(containsString("overdue since"), not(containsString("days left")))));
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        });
    }

    @Test
    void thePagesLeadFromTheRecordToTheContestAndBack() throws Exception {
        page(trainee, "/signed/" + signed.id())
                .andExpect(content().string(containsString("/signed/" + signed.id() + "/contest")));
        page(trainee, "/signed/" + signed.id() + "/contest")
                .andExpect(content().string(containsString("I contest this score")));
        mockMvc.perform(post("/signed/{id}/contest", signed.id())
                        .param("steps", "TF09", "TF12")
                        .param("reason", "I did these steps alone, start to finish.")
                        .param("password", TestOrganisations.PASSWORD)
                        .with(LogIn.as(trainee))
                        .with(csrf()))
                .andExpect(redirectedUrlPattern("/contests/*"));
        UUID contest =
                acts.history(theatre, trainee, signed.id()).contests().get(0).id();
        page(scorer, "/contests/" + contest + "/reply")
                .andExpect(content().string(containsString("I reply to this contest as the scorer")));
        acts.reply(theatre, scorer, contest).orThrow();
        page(director, "/contests/" + contest + "/reviewer")
                .andExpect(content()
                        .string(allOf(
                                containsString("Ottilie Brannock"), not(containsString("Ansel Verrin</option>")))));
        mockMvc.perform(post("/contests/{id}/reviewer", contest)
                        .param("password", TestOrganisations.PASSWORD)
                        .with(LogIn.as(director))
                        .with(csrf()))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Choose one of the supervisors in the list.")));
        page(trainee, "/signed/" + signed.id()).andExpect(content().string(containsString("/contests/" + contest)));
    }

    private RecordMarks marks() {
        return theatre.organisation()
                .in(() -> signedSheets.ofSheet(signed.sheetId()))
                .orElseThrow()
                .marks();
    }

    private ResultActions page(SignedIn who, String path) throws Exception {
        return mockMvc.perform(get(path).with(LogIn.as(who))).andExpect(status().isOk());
    }
}
