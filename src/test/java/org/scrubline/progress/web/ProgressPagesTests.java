package org.scrubline.progress.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.SelfScores;
import org.scrubline.casework.Sheets;
import org.scrubline.people.People;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Rubrics;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.support.History;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

@ScrublineTest
class ProgressPagesTests {

    private static final Instant START =
            Instant.now().minus(Duration.ofDays(100)).truncatedTo(ChronoUnit.MINUTES);
    private static final String CAUTION =
            "Supports, does not replace, the judgement of licensed supervisors and local policy.";

    @Autowired
    private MockMvc mvc;

    @Autowired
    private TestOrganisations organisations;

    @Autowired
    private Rubrics rubrics;

    @Autowired
    private People people;

    @Autowired
    private History history;

    @Autowired
    private Sheets sheets;

    @Autowired
    private SelfScores selfScores;

    private TestOrganisation organisation;
    private SignedIn trainee;
    private SignedIn brannock;
    private SignedIn karsenmark;
    private SignedIn director;

    @BeforeEach
    void openAProgramme() {
        organisation = organisations.open();
        director = organisation.join("Corisande Delmarr", Role.DIRECTOR);
        trainee = organisation.join("Fenna Hallinor", Role.TRAINEE);
        brannock = organisation.join("Ottilie Brannock", Role.SUPERVISOR);
        karsenmark = organisation.join("Ludo Karsenmark", Role.SUPERVISOR);
        organisation.in(() -> rubrics.publishLibrary(director.personId()).orThrow());
    }

    @Test
    void ownLevelsStandBesideTheSignedOnesOnTheOwnPageAlone() throws Exception {
        UUID sheet = history.waiting(organisation, trainee, brannock, START);
        UUID caseId = organisation.in(
                () -> sheets.toScore(brannock.personId()).get(0).surgicalCase().id());
        organisation.in(() ->
                selfScores.save(trainee, caseId, Map.of("TF03", 5, "TF09", 5)).orThrow());
        assertThat(page("/progress", trainee)).doesNotContain("of a level higher");

        SignedSheet signed = history.sign(organisation, brannock, sheet, START, Map.of("TF09", 3));

        assertThat(page("/progress", trainee))
                .contains("Over the newest case with both, you scored the same steps 1.5 of a level higher")
                .contains("Too few cases or scorers to conclude.", "/signed/" + signed.id(), "+1.5")
                .contains("/reflections", "Only you can read them.")
                .doesNotContain("??");
        assertThat(page("/progress/" + trainee.personId(), director))
                .doesNotContain("Your own levels", "/reflections", "+1.5");
    }

    @Test
    void withoutASignedCaseThePageSaysWhyItIsEmpty() throws Exception {
        history.waiting(organisation, trainee, brannock, START);

        assertThat(page("/progress", trainee)).contains("No signed case counts yet", CAUTION);
        assertThat(page(of(trainee), director)).contains("No signed case counts yet");
    }

    @Test
    void tooLittleIsNamedWithItsNumbersAndRawCountsStay() throws Exception {
        signed(0, brannock, Map.of("TF09", 2));
        signed(1, brannock, Map.of());

        String page = page("/progress", trainee);

        assertThat(page)
                .contains("Too few cases or scorers to conclude.", "Insufficient evidence")
                .contains("2 cases so far; 5 are needed.", "1 supervisor has signed; 2 are needed.")
                .contains("was scored twice; 3 times are needed.", "few (1 of 2)", CAUTION)
                .doesNotContain("<svg xmlns", "95 % interval 0");
    }

    @Test
    void enoughCasesShowSharesIntervalsChartAndWhatToPractise() throws Exception {
        sixCases();

        String page = page("/progress", trainee);

        assertThat(page)
                .contains("33 % (2 of 6)", "10 to 70 %")
                .contains("What to practise next", "33 % at level 4 or 5 (95 % interval 10 to 70 %): 2 of 6 scores")
                .contains("6 cases in order, 1 of them with a critical event", "limit 2.99")
                .contains("Insufficient evidence for a proposal", "6 cases so far; 12 are needed.")
                .contains("href=\"/progress/" + trainee.personId() + "/steps/TF09?procedure=TRAB_FORNIX\"")
                .doesNotContain("Too few cases", "??");
    }

    @Test
    void aStepOpensTheSheetsBehindItsNumbers() throws Exception {
        List<SignedSheet> sheets = sixCases();

        String page = page(of(trainee) + "/steps/TF09?procedure=TRAB_FORNIX", trainee);

        assertThat(page)
                .contains("Ottilie Brannock", "Ludo Karsenmark", CAUTION)
                .doesNotContain("??");
        assertThat(sheets).allSatisfy(sheet -> assertThat(page).contains("href=\"/signed/" + sheet.id() + "\""));
    }

    @Test
    void aStepThatWasNotScoredSaysItsStateAndNoLevel() throws Exception {
        history.signed(organisation, trainee, brannock, START, Map.of("TF13", History.NOT_SEEN));

        assertThat(page(of(trainee) + "/steps/TF13", trainee))
                .contains("<span class=\"soft\">not seen</span>")
                .doesNotContain("no level", "class=\"notch\"");
    }

    @Test
    void theStrokesFollowTheStepChosen() throws Exception {
        sixCases();

        assertThat(page("/progress?step=TF09", trainee)).contains("level of Lamellar");
        answers("/progress?step=TF99", trainee, 404);
        answers("/progress?procedure=NEEDLING", trainee, 404);
    }

    @Test
    void anotherTraineesNumbersAreNowhereOnThePage() throws Exception {
        sixCases();
        SignedIn other = organisation.join("Brisa Tekmor", Role.TRAINEE);
        history.signed(organisation, other, brannock, START, Map.of("TF09", 1));

        assertThat(page("/progress", trainee)).doesNotContain("Tekmor", "7 cases");
        assertThat(page("/progress", other)).contains("1 case so far");
    }

    @Test
    void onlyTheTraineeAndThoseWhoLeadTheProgrammeMayRead() throws Exception {
        signed(0, brannock, Map.of());
        SignedIn other = organisation.join("Brisa Tekmor", Role.TRAINEE);
        SignedIn member = organisation.join("Asta Brevonne", Role.COMMITTEE_MEMBER);
        SignedIn administrator = organisation.join("Pell Ormandine", Role.ADMINISTRATOR);
        SignedIn elsewhere = directorOfAnotherProgramme();
        TestOrganisation foreign = organisations.open();
        SignedIn stranger = foreign.join("Rhosyn Callavere", Role.DIRECTOR);

        for (String address : List.of(of(trainee), of(trainee) + "/steps/TF09")) {
            answers(address, trainee, 200);
            answers(address, director, 200);
            answers(address, member, 200);
            answers(address, other, 404);
            answers(address, brannock, 404);
            answers(address, administrator, 404);
            answers(address, elsewhere, 404);
            answers(address, stranger, 404);
        }
        answers("/progress", director, 404);
        answers("/progress/" + UUID.randomUUID(), director, 404);
        answers("/progress/not-an-id", director, 404);
        answers(of(trainee) + "/steps/TF99", trainee, 404);
    }

    private SignedIn directorOfAnotherProgramme() {
        SignedIn person = organisation.join("Thaddeus Quillmere", Role.SUPERVISOR);
        organisation.in(() -> {
            UUID programme = people.addProgramme("Other programme", "Europe/London")
                    .orThrow()
                    .id();
            people.grant(programme, person.personId(), Role.DIRECTOR);
            return programme;
        });
        return organisation.now(person.personId());
    }

    /** TF09 at 4 or 5 in two of six cases, once at 2; two scorers. */
    private List<SignedSheet> sixCases() {
        return List.of(
                signed(0, brannock, Map.of("TF09", 2)),
                signed(1, karsenmark, Map.of("TF09", 3)),
                signed(2, brannock, Map.of("TF09", 3)),
                signed(3, karsenmark, Map.of("TF09", 3)),
                signed(4, brannock, Map.of("TF09", 4)),
                signed(5, karsenmark, Map.of("TF09", 5)));
    }

    private SignedSheet signed(int week, SignedIn scorer, Map<String, Integer> levels) {
        return history.signed(organisation, trainee, scorer, START.plus(Duration.ofDays(7L * week)), levels);
    }

    private static String of(SignedIn person) {
        return "/progress/" + person.personId();
    }

    private String page(String address, SignedIn who) throws Exception {
        return mvc.perform(get(address).with(LogIn.as(who)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString();
    }

    private void answers(String address, SignedIn who, int expected) throws Exception {
        mvc.perform(get(address).with(LogIn.as(who))).andExpect(status().is(expected));
    }
}
