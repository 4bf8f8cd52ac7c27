package org.scrubline.cohort.web;

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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
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
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.transaction.support.TransactionTemplate;

@ScrublineTest
class SignalPagesTests {

    private static final Instant NOW = Instant.now().truncatedTo(ChronoUnit.MINUTES);

    @Autowired
    private MockMvc mvc;

    @Autowired
    private TestOrganisations organisations;

    @Autowired
    private Rubrics rubrics;

    @Autowired
    private History history;

    @Autowired
    private JdbcClient jdbc;

    @Autowired
    private TransactionTemplate transaction;

    private TestOrganisation organisation;
    private SignedIn director;
    private SignedIn brannock;
    private List<SignedIn> trainees;

    @BeforeEach
    void openAProgramme() {
        organisation = organisations.open();
        director = organisation.join("Corisande Delmarr", Role.DIRECTOR);
        brannock = organisation.join("Ottilie Brannock", Role.SUPERVISOR);
        trainees = List.of(
                organisation.join("Fenna Hallinor", Role.TRAINEE),
                organisation.join("Brisa Tekmor", Role.TRAINEE),
                organisation.join("Hadi Nkolaris", Role.TRAINEE),
                organisation.join("Iolo Sorrendi", Role.TRAINEE));
        organisation.in(() -> rubrics.publishLibrary(director.personId()).orThrow());
    }

    @Test
    void anEmptyProgrammeSaysSoOnEveryPage() throws Exception {
        assertThat(page("/cohort/signals", director))
                .contains("No early signal")
                .doesNotContain("??");
        assertThat(page("/cohort/scorers", director))
                .contains("No signed sheet yet")
                .doesNotContain("??");
        assertThat(page("/my-scoring", brannock))
                .contains("Too few to judge: no sheet about no trainee so far; 10 sheets about 4 trainees are needed")
                .contains("Too few cases or scorers to conclude.")
                .doesNotContain("??");
    }

    @Test
    void aSignalNamesItsReasonWhatWouldChangeItAndEverySheetBehindIt() throws Exception {
        SignedSheet one = signed(trainees.get(0), 9);
        SignedSheet two = signed(trainees.get(0), 3);
        assertThat(page("/cohort/signals", director))
                .contains("Fenna Hallinor: insufficient evidence")
                .contains("Where there is most: 2 cases, 1 scorer, 100 % of the sheets by one of them.")
                .contains("A thin record is no negative.")
                .contains("The 2 signed sheets behind this", "/signed/" + one.id(), "/signed/" + two.id())
                .contains("Adjusted for case difficulty and scorer habit; raw scores stand beside it.")
                .doesNotContain("Brisa Tekmor: ");
    }

    @Test
    void aSignalAboutSomebodyWhoLeftSaysSo() throws Exception {
        signed(trainees.get(0), 9);
        signed(trainees.get(1), 9);
        organisation.in(() -> transaction.execute(
                status -> jdbc.sql("update programme_role set ended_at = now() where person_id = :person")
                        .param("person", trainees.get(0).personId())
                        .update()));
        assertThat(page("/cohort/signals", director))
                .contains("Fenna Hallinor (training ended): insufficient evidence")
                .contains("Brisa Tekmor: insufficient evidence");
    }

    @Test
    void belowTenSheetsOnFourTraineesOnlyTheCountsOfASupervisorAreShown() throws Exception {
        for (int day = 1; day <= 9; day++) {
            signed(trainees.get(day % 4), day);
        }
        assertThat(page("/my-scoring", brannock))
                .contains("9 sheets about 4 trainees so far")
                .doesNotContain("Offset, levels");
        assertThat(page("/cohort/scorers", director))
                .contains("Ottilie Brannock")
                .doesNotContain("0 % of 9");
    }

    @Test
    void fromTenSheetsOnFourTraineesASupervisorSeesTheOwnFiguresAndNoColleaguesName() throws Exception {
        for (int day = 1; day <= 10; day++) {
            signed(trainees.get(day % 4), day);
        }
        assertThat(page("/my-scoring", brannock))
                .contains("one level for all steps", "100 % of the sheets with eight scored steps or more")
                .contains("Offset, levels")
                .doesNotContain("Silvan Orrery");
        assertThat(page("/cohort/scorers", director)).contains("Ottilie Brannock: one level for all steps");
    }

    @Test
    void aCommitteeMemberReadsSignalsAndNothingAboutScorers() throws Exception {
        SignedIn member = organisation.join("Thaddeus Quillmere", Role.COMMITTEE_MEMBER);
        assertThat(page("/cohort/signals", member)).contains("Early signals");
        refused("/cohort/scorers", member);
        assertThat(page("/cohort", member)).contains("Early signals").doesNotContain("/cohort/scorers");
        assertThat(page("/cohort", director)).contains("/cohort/scorers");
    }

    @ParameterizedTest
    @EnumSource(
            value = Role.class,
            names = {"SUPERVISOR", "TRAINEE", "ADMINISTRATOR", "VISITOR", "ANALYST"})
    void nobodyElseReadsThem(Role role) throws Exception {
        SignedIn other = organisation.join("Pell Ormandine", role);
        refused("/cohort/signals", other);
        refused("/cohort/scorers", other);
    }

    @Test
    void onlyASupervisorHasAWayOfScoring() throws Exception {
        refused("/my-scoring", director);
        refused("/my-scoring?programme=" + UUID.randomUUID(), brannock);
        refused("/cohort/signals?programme=" + UUID.randomUUID(), director);
    }

    private SignedSheet signed(SignedIn trainee, int daysAgo) {
        return history.signed(organisation, trainee, brannock, NOW.minus(Duration.ofDays(daysAgo)), Map.of());
    }

    private void refused(String path, SignedIn who) throws Exception {
        mvc.perform(get(path).with(LogIn.as(who))).andExpect(status().isNotFound());
    }

    private String page(String path, SignedIn who) throws Exception {
        return mvc.perform(get(path).with(LogIn.as(who)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString();
    }
}
