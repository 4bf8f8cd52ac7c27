package org.scrubline.outcome.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.Cases;
import org.scrubline.casework.TestProgramme;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Rubrics;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

@ScrublineTest
class OutcomePagesTests {

    private static final String CAUTION = "Outcomes reflect a team and the patient&#39;s disease.";

    @Autowired
    MockMvc mvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    Rubrics rubrics;

    @Autowired
    Cases cases;

    @Autowired
    Clock clock;

    private TestProgramme here;
    private UUID caseId;
    private LocalDate operated;

    @BeforeEach
    void operate() {
        here = TestProgramme.open(organisations.open(), rubrics);
        Instant ended = clock.instant().minus(Duration.ofDays(200));
        operated = LocalDate.ofInstant(ended, ZoneId.of("Europe/London"));
        caseId = here.organisation()
                .in(() -> cases.log(here.trainee(), here.entry("K7-204", ended).done())
                        .orThrow()
                        .id());
    }

    @Test
    void theCasePageLeadsToItsOutcomeAndTheListNamesWhatIsDue() throws Exception {
        assertThat(page("/cases/" + caseId, here.trainee())).contains("href=\"/outcomes/" + caseId + "\"");
        assertThat(page("/outcomes", here.director()))
                .contains("href=\"/outcomes/" + caseId + "\"", "K7-204", "Fenna Hallinor", "overdue", "1 of them lacks")
                .contains("href=\"/outcomes/programme?programme=", CAUTION)
                .doesNotContain("??");
        assertThat(page("/outcomes?show=DUE&window=D1", here.director())).contains("Nothing to find out");
        assertThat(page("/outcomes", here.another("Brisa Tekmor", Role.TRAINEE)))
                .contains("No case to follow yet");
        answers("/outcomes?window=M99", here.director(), 404);
        answers("/outcomes", here.another("Asta Brevonne", Role.COMMITTEE_MEMBER), 404);
    }

    @Test
    void anAdministratorEntersOutcomesAndIsSentToNoCaseTheyCannotRead() throws Exception {
        SignedIn administrator = here.another("Pell Ormandine", Role.ADMINISTRATOR);
        String link = "href=\"/cases/" + caseId + "\"";
        assertThat(page(path(), here.director())).contains(link);
        assertThat(page(path(), administrator)).contains("href=\"/outcomes\"").doesNotContain(link);
    }

    @Test
    void aVisitIsEnteredPutRightAndStaysReadable() throws Exception {
        assertThat(page(path(), here.supervisor()))
                .contains("No pressure from before the operation is known", "Nothing is known yet.", CAUTION)
                .contains(
                        "Low pressure alone harms no eye",
                        "at most 21 mmHg and at least 6 mmHg, and at least 20 % below")
                .doesNotContain("??");
        send(
                "baseline",
                Map.of(
                        "baselineDay", operated.minusDays(2).toString(),
                        "baselineIop", "24",
                        "baselineDrops", "3",
                        "baselineSource", "CLINIC_LETTER"));
        send("visit", visit("51"));
        assertThat(page(path() + "?replaces=2", here.trainee()))
                .contains("value=\"51\"", "Put entry 2 right", "Nobody but the operator has seen this eye");
        Map<String, String> right = new java.util.HashMap<>(visit("15,5"));
        right.put("replaces", "2");
        send("visit", right);
        assertThat(page(path(), here.director()))
                .contains("15.5 mmHg, 1 kind of drops", "51 mmHg", "Holds no more.", "Puts entry 2 right")
                .contains("Entered by Fenna Hallinor", "I saw the eye myself", "chamber deep");
        answers(path() + "?replaces=2", here.trainee(), 404);
        send("mistake", Map.of("replaces", "3"));
        assertThat(page(path(), here.trainee())).contains("No visit has been entered yet.");
    }

    @Test
    void whatCannotBeTakenIsExplainedAndNothingTypedIsLost() throws Exception {
        Map<String, String> wrong = new java.util.HashMap<>(visit("14.3"));
        wrong.put("day", "");
        MockHttpServletResponse answer = perform(form("visit", wrong), here.trainee());
        assertThat(answer.getStatus()).isEqualTo(422);
        assertThat(answer.getContentAsString())
                .contains("Enter a day.", "Enter the pressure in mmHg, 0 to 80", "value=\"14.3\"", "href=\"#iop\"");
        MockHttpServletResponse none = perform(form("no-visit", Map.of("noneAbsence", "LOST")), here.trainee());
        assertThat(none.getStatus()).isEqualTo(422);
        assertThat(none.getContentAsString()).contains("href=\"#noneWhy\"", "href=\"#noneWindow\"");
        MockHttpServletResponse ahead = perform(
                form(
                        "baseline",
                        Map.of(
                                "baselineDay", operated.plusDays(2).toString(),
                                "baselineIop", "24",
                                "baselineDrops", "3",
                                "baselineSource", "CLINIC_LETTER")),
                here.trainee());
        assertThat(ahead.getContentAsString())
                .contains("href=\"#baselineDay\"", "A baseline is measured on the day of the operation");
    }

    @Test
    void theProgrammeSaysItsDefinitionAndKeepsRatesOfFewCasesBack() throws Exception {
        assertThat(page("/outcomes/programme?family=GEL_STENT", here.director()))
                .contains("No such case yet");
        String page = page("/outcomes/programme?set=UP_TO_15", here.director());
        assertThat(page)
                .contains("at most 15 mmHg and at least 6 mmHg, and at least 30 % below the baseline")
                .contains("fewer than 30 cases", "0 of 10, 0 % (95 % interval 0 to 31 %)")
                .contains("3 of 30, 10 % (95 % interval 2 to 27 %)", "6 of 30, 20 % (95 % interval 8 to 39 %)")
                .contains("care, not complications", "Low pressure here is 5 mmHg or less", CAUTION)
                .contains("Too few cases or scorers to conclude.", "Reference values for teaching")
                .doesNotContain("??");
        String cases = "/outcomes/programme/cases?trainee=" + here.trainee().personId();
        assertThat(page(cases, here.director())).contains("K7-204", "href=\"/outcomes/" + caseId + "\"");
        SignedIn member = here.another("Asta Brevonne", Role.COMMITTEE_MEMBER);
        assertThat(page(cases, member)).contains("K7-204").doesNotContain("href=\"/outcomes/" + caseId);
        assertThat(page("/outcomes/programme", member)).contains("href=\"/outcomes/programme\"");
        answers("/outcomes/programme", here.trainee(), 404);
        answers("/outcomes/programme/cases", here.director(), 404);
        answers(cases, here.supervisor(), 404);
    }

    @Test
    void strangersFindNothing() throws Exception {
        SignedIn stranger = organisations.open().join("Corin Abroad", Role.DIRECTOR);
        SignedIn visitor = here.another("Rhosyn Callavere", Role.VISITOR);
        for (SignedIn nobody : new SignedIn[] {stranger, visitor}) {
            answers(path(), nobody, 404);
            assertThat(perform(form("visit", visit("12")), nobody).getStatus()).isEqualTo(404);
        }
    }

    private Map<String, String> visit(String iop) {
        return Map.of(
                "day", operated.plusDays(7).toString(),
                "iop", iop,
                "drops", "1",
                "chamber", "DEEP",
                "seenBy", "OPERATOR",
                "source", "SEEN_MYSELF");
    }

    private String path() {
        return "/outcomes/" + caseId;
    }

    private void send(String form, Map<String, String> fields) throws Exception {
        assertThat(perform(form(form, fields), here.trainee()).getRedirectedUrl())
                .isEqualTo(path());
    }

    private MockHttpServletRequestBuilder form(String form, Map<String, String> fields) {
        MockHttpServletRequestBuilder request = post(path() + "/" + form).with(csrf());
        fields.forEach(request::param);
        return request;
    }

    private String page(String address, SignedIn who) throws Exception {
        MockHttpServletResponse answer = perform(get(address), who);
        assertThat(answer.getStatus()).as(address).isEqualTo(200);
        return answer.getContentAsString();
    }

    private void answers(String address, SignedIn who, int status) throws Exception {
        assertThat(perform(get(address), who).getStatus()).as(address).isEqualTo(status);
    }

    private MockHttpServletResponse perform(MockHttpServletRequestBuilder request, SignedIn who) throws Exception {
        return mvc.perform(request.with(LogIn.as(who))).andReturn().getResponse();
    }
}
