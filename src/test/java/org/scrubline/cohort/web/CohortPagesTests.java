package org.scrubline.cohort.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.scrubline.people.People;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Rubrics;
import org.scrubline.support.History;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

@ScrublineTest
class CohortPagesTests {

    private static final Instant NOW = Instant.now().truncatedTo(ChronoUnit.MINUTES);

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

    private TestOrganisation organisation;
    private SignedIn director;
    private SignedIn hallinor;
    private SignedIn tekmor;
    private SignedIn brannock;
    private SignedIn karsenmark;

    @BeforeEach
    void openAProgramme() {
        organisation = organisations.open();
        director = organisation.join("Corisande Delmarr", Role.DIRECTOR);
        hallinor = organisation.join("Fenna Hallinor", Role.TRAINEE);
        tekmor = organisation.join("Brisa Tekmor", Role.TRAINEE);
        brannock = organisation.join("Ottilie Brannock", Role.SUPERVISOR);
        karsenmark = organisation.join("Ludo Karsenmark", Role.SUPERVISOR);
        organisation.in(() -> rubrics.publishLibrary(director.personId()).orThrow());
    }

    @Test
    void anEmptyCohortSaysWhyAndStillListsTheTrainees() throws Exception {
        assertThat(page("/cohort", director))
                .contains("No signed case of this procedure yet", "Fenna Hallinor", "Brisa Tekmor")
                .contains("No sheet was asked for yet.")
                .contains("Supports, does not replace, the judgement of licensed supervisors and local policy.")
                .doesNotContain("??");
    }

    @Test
    void theTableShowsSharesWhereThereIsEnoughAndSaysFewWhereNot() throws Exception {
        for (int week = 1; week <= 6; week++) {
            signed(hallinor, 7 * week, week % 2 == 0 ? brannock : karsenmark, week <= 2 ? 5 : 3);
        }
        signed(tekmor, 3, brannock, 5);

        String page = page("/cohort", director);

        assertThat(page)
                .contains("Fenna Hallinor, Lamellar dissection: 33 % of 6 scores at level 4 or 5", ">33 (6)<")
                .contains("Brisa Tekmor, Lamellar dissection: too few to conclude, 1 of 1 scores")
                .contains("href=\"/progress/" + hallinor.personId() + "/steps/TF09?procedure=TRAB_FORNIX\"")
                .contains("Too few cases or scorers to conclude.", "signed within a day (100 %)")
                .doesNotContain("??", "No signed case of this procedure yet");
        assertThat(page.indexOf("Brisa Tekmor")).as("in the order of names").isLessThan(page.indexOf("Fenna Hallinor"));
    }

    @Test
    void recordsAwaitingACountersignatureAreCountedAndMarkedAtTheirStep() throws Exception {
        signed(hallinor, 20, brannock, 4);
        assertThat(page("/cohort", director)).contains("sheets await a countersignature");
        history.signedAlone(organisation, hallinor, brannock, daysAgo(3), Map.of());

        assertThat(page("/cohort", director)).contains("sheet awaits a countersignature");
        assertThat(page("/progress/" + hallinor.personId(), director))
                .contains("sheet awaits a countersignature: in the curve, toward no gate");
        assertThat(page("/progress/" + hallinor.personId() + "/steps/TF09?procedure=TRAB_FORNIX", director))
                .containsOnlyOnce("awaiting countersignature");
    }

    @Test
    void whatIsWorthALookSaysWhyAndWhatWouldChangeIt() throws Exception {
        for (int week = 10; week <= 17; week++) {
            signed(hallinor, 7 * week, week % 2 == 0 ? brannock : karsenmark, 3);
        }

        String page = page("/cohort", director);

        assertThat(page)
                .contains("No case of this procedure for 70 days; a gap counts from 56 days.")
                .contains("A logged case ends the gap.")
                .contains("Fenna Hallinor: Lamellar dissection")
                .contains(
                        "0 of 8 scores at level 4 or 5; the 95 % interval, 0 to 32 %, ends below 80 % and below this trainee’s other steps (")
                .contains("Scored below 4 in 8 cases by 2 scorers.", "More scores at level 4 or 5 change this.");
    }

    @Test
    void openSheetsAreCountedAsWaitingThenAsNeverScored() throws Exception {
        history.waiting(organisation, hallinor, brannock, daysAgo(2));
        history.waiting(organisation, hallinor, karsenmark, daysAgo(20));

        assertThat(page("/cohort", director))
                .contains("waiting, case up to 14 days ago (50 %)", "never scored, case longer ago (50 %)")
                .contains("Of 2 sheets asked for");
    }

    @Test
    void onlyThoseWhoLeadTheProgrammeMayRead() throws Exception {
        SignedIn member = organisation.join("Asta Brevonne", Role.COMMITTEE_MEMBER);
        SignedIn administrator = organisation.join("Pell Ormandine", Role.ADMINISTRATOR);

        answers("/cohort", director, 200);
        answers("/cohort", member, 200);
        answers("/cohort", hallinor, 404);
        answers("/cohort", brannock, 404);
        answers("/cohort", administrator, 404);
        answers("/cohort?procedure=UNKNOWN", director, 404);
        answers("/cohort?programme=" + UUID.randomUUID(), director, 404);
        answers("/cohort?programme=" + organisations.open().programme().id(), director, 404);
    }

    @Test
    void aDirectorOfAnotherProgrammeSeesThatOneAlone() throws Exception {
        signed(hallinor, 3, brannock, 4);
        UUID other = organisation.in(() -> people.addProgramme("Other programme", "Europe/London")
                .orThrow()
                .id());
        SignedIn person = organisation.join("Thaddeus Quillmere", Role.SUPERVISOR);
        organisation.in(() -> {
            people.grant(other, person.personId(), Role.DIRECTOR);
            return other;
        });

        SignedIn elsewhere = organisation.now(person.personId());
        assertThat(page("/cohort", elsewhere)).contains("Other programme").doesNotContain("Fenna Hallinor");
        answers("/cohort?programme=" + organisation.programme().id(), elsewhere, 404);
    }

    @ParameterizedTest
    @CsvSource({"0, 1", "1, 1", "20, 1", "21, 2", "40, 2", "41, 3", "80, 4", "81, 5", "100, 5"})
    void theTintIsTheFifthThePercentFallsIn(int percent, int tint) {
        assertThat(Grid.tint(percent)).isEqualTo(tint);
    }

    private void signed(SignedIn trainee, int days, SignedIn scorer, int flap) {
        history.signed(organisation, trainee, scorer, daysAgo(days), Map.of("TF09", flap));
    }

    private static Instant daysAgo(int days) {
        return NOW.minus(Duration.ofDays(days));
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
