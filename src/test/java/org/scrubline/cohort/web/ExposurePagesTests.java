package org.scrubline.cohort.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.Sheets;
import org.scrubline.cohort.Exposure;
import org.scrubline.people.ExposurePlans;
import org.scrubline.people.PlacementEntry;
import org.scrubline.people.Placements;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Family;
import org.scrubline.rubric.Rubrics;
import org.scrubline.support.History;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;

@ScrublineTest
class ExposurePagesTests {

    private static final Instant NOW = Instant.now();

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    Rubrics rubrics;

    @Autowired
    Placements placements;

    @Autowired
    ExposurePlans plans;

    @Autowired
    Exposure exposure;

    @Autowired
    History history;

    @Autowired
    Sheets sheets;

    TestOrganisation organisation;
    SignedIn director;
    SignedIn trainee;
    SignedIn supervisor;

    @BeforeEach
    void open() {
        organisation = organisations.open();
        director = organisation.join("Corisande Delmarr", Role.DIRECTOR);
        trainee = organisation.join("Fenna Hallinor", Role.TRAINEE);
        supervisor = organisation.join("Ottilie Brannock", Role.SUPERVISOR);
        organisation.in(() -> rubrics.publishLibrary(director.personId()).orThrow());
    }

    @Test
    void withoutAPlanOrAPlacementNothingIsSaid() throws Exception {
        look(director)
                .andExpect(
                        content().string(allOf(containsString("Nothing is planned yet"), not(containsString("??")))));
        twoAMonth();
        look(director)
                .andExpect(content()
                        .string(allOf(
                                containsString("No trainee has a placement yet"),
                                containsString("<li>Fenna Hallinor</li>"))));
    }

    @Test
    void signedAndUnscoredCasesBothCountAndWhatIsMissingIsSaidWithTheNumber() throws Exception {
        twoAMonth();
        placed(100, "100");
        history.signed(organisation, trainee, supervisor, NOW.minus(Duration.ofDays(80)), Map.of());
        history.waiting(organisation, trainee, supervisor, NOW.minus(Duration.ofDays(70)));
        Exposure.Line line = line();
        assertThat(line.months()).isEqualTo(3);
        assertThat(line.planned()).isEqualTo(6);
        assertThat(line.done()).isEqualTo(2);
        assertThat(line.unsigned()).isEqualTo(1);
        assertThat(line.behind()).isEqualTo(4);
        look(director).andExpect(content().string(allOf(containsString("behind plan by 4"), containsString("6.0"))));
    }

    @Test
    void threeFifthsOfFullTimeIsThreeFifthsOfThePlan() {
        twoAMonth();
        placed(100, "60");
        assertThat(line().planned()).isCloseTo(3.6, within(1e-9));
        assertThat(line().behind()).isEqualTo(3);
    }

    @Test
    void inTheFirstTwoMonthsItIsTooEarlyToSay() throws Exception {
        twoAMonth();
        placed(40, "100");
        look(director)
                .andExpect(content()
                        .string(allOf(containsString("too early to say"), not(containsString("behind plan by")))));
    }

    @Test
    void whoDoesNotLeadOrDecideFindsNoSuchPage() throws Exception {
        look(organisation.join("Pell Ormandine", Role.ADMINISTRATOR)).andExpect(status().isOk());
        look(organisation.join("Thaddeus Quillmere", Role.COMMITTEE_MEMBER)).andExpect(status().isOk());
        look(supervisor).andExpect(status().isNotFound());
        look(trainee).andExpect(status().isNotFound());
        SignedIn abroad = organisations.open().join("Somebody Else", Role.DIRECTOR);
        mockMvc.perform(get("/cohort/exposure?programme="
                                + organisation.programme().id())
                        .with(LogIn.as(abroad)))
                .andExpect(status().isNotFound());
    }

    @Test
    void eachCountOpensTheCasesItCounts() throws Exception {
        twoAMonth();
        placed(100, "100");
        history.signed(organisation, trainee, supervisor, NOW.minus(Duration.ofDays(80)), Map.of());
        UUID open = history.waiting(organisation, trainee, supervisor, NOW.minus(Duration.ofDays(70)));
        String href = "/cohort/exposure/cases?programme=%s&trainee=%s&family=TRABECULECTOMY"
                .formatted(organisation.programme().id(), trainee.personId());
        look(director).andExpect(content().string(containsString("href=\"" + href.replace("&", "&amp;") + "\">2</a>")));

        Exposure.LineCases behind = organisation.in(() ->
                exposure.cases(director, organisation.programme().id(), trainee.personId(), Family.TRABECULECTOMY));
        assertThat(behind.cases()).extracting(Exposure.Done::unsigned).containsExactly(1, 0);
        UUID newest = organisation.in(() -> sheets.get(open)).caseId();
        look(director, href)
                .andExpect(content()
                        .string(allOf(
                                containsString("Fenna Hallinor: Trabeculectomy"),
                                containsString("href=\"/cases/" + newest + "\""),
                                containsString("whole case"),
                                not(containsString("??")))));
        look(organisation.join("Thaddeus Quillmere", Role.COMMITTEE_MEMBER), href)
                .andExpect(
                        content().string(allOf(containsString("whole case"), not(containsString("href=\"/cases/")))));
        look(director, href.replace("TRABECULECTOMY", "NEEDLING"))
                .andExpect(content().string(containsString("No case yet")));
        look(director, href.replace("TRABECULECTOMY", "NO_SUCH")).andExpect(status().isNotFound());
        look(
                        director,
                        href.replace(
                                trainee.personId().toString(),
                                director.personId().toString()))
                .andExpect(status().isNotFound());
        look(trainee, href).andExpect(status().isNotFound());
    }

    private void twoAMonth() {
        Map<String, String> typed = new HashMap<>();
        for (int month = 1; month <= 12; month++) {
            typed.put(ExposurePlans.field(month), "2");
        }
        organisation.in(() -> plans.plan(director, organisation.programme().id(), "TRABECULECTOMY", typed)
                .orThrow());
    }

    private void placed(int daysAgo, String share) {
        LocalDate first = LocalDate.ofInstant(NOW, ZoneId.of("Europe/London")).minusDays(daysAgo);
        PlacementEntry entry = new PlacementEntry(
                trainee.personId().toString(),
                organisation.site().id().toString(),
                first.toString(),
                first.plusYears(1).toString(),
                share);
        organisation.in(() ->
                placements.place(director, organisation.programme().id(), entry).orThrow());
    }

    private Exposure.Line line() {
        return organisation.in(() -> exposure.report(director, null)).lines().get(0);
    }

    private ResultActions look(SignedIn who) throws Exception {
        return look(who, "/cohort/exposure");
    }

    private ResultActions look(SignedIn who, String path) throws Exception {
        return mockMvc.perform(get(path).with(LogIn.as(who)));
    }
}
