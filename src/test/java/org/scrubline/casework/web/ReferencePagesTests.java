package org.scrubline.casework.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.TestProgramme;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Rubrics;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.transaction.support.TransactionTemplate;

/** Reference cases on the pages of those who add, score and compare them. */
@ScrublineTest
class ReferencePagesTests {

    @Autowired
    MockMvc mvc;

    @Autowired
    Rubrics rubrics;

    @Autowired
    ScrublineClock clock;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    TestProgramme here;
    SignedIn director;
    SignedIn brannock;
    LocalDate today;

    @BeforeEach
    void openAProgramme() {
        here = TestProgramme.open(organisations.open(), rubrics);
        director = here.director();
        brannock = here.supervisor();
        today = LocalDate.ofInstant(
                clock.instant(), here.organisation().programme().zone());
    }

    @Test
    void anEmptyProgrammeSaysSoOnEveryPage() throws Exception {
        assertThat(page("/reference-cases", brannock))
                .contains("No reference case yet")
                .doesNotContain("Add a reference case", "??");
        assertThat(page("/reference-cases", director))
                .contains("Add a reference case")
                .doesNotContain("??");
        assertThat(page("/my-scoring/reference", brannock))
                .contains("Too little to judge: no supervisor and no step scored by two or more so far")
                .contains("Too few cases or scorers to conclude.")
                .doesNotContain("Krippendorff", "??");
        assertThat(page("/cohort/reference", director))
                .contains("3 supervisors and 20 steps are needed")
                .doesNotContain("By supervisor", "??");
        assertThat(page("/my-scoring", brannock)).contains("/reference-cases?programme=");
        assertThat(page("/cohort/scorers", director)).contains("/reference-cases?programme=");
    }

    @Test
    void aDirectorAddsACaseAndEverySupervisorFindsIt() throws Exception {
        MockHttpServletResponse refused = send("/reference-cases", director, Map.of("title", "An even flap"));
        assertThat(refused.getStatus()).isEqualTo(422);
        assertThat(refused.getContentAsString())
                .contains("A reference begins with a letter", "value=\"An even flap\"")
                .contains("Choose the band of the case.", "Enter the last day to score it, today or later.")
                .doesNotContain("??");

        String path = added("REF-1");

        assertThat(page("/reference-cases", brannock))
                .contains("For you to score", "REF-1, An even flap", "0 of 1", path)
                .doesNotContain("Close this reference case");
        assertThat(page(path, brannock))
                .contains("Teaching drive, folder of flaps.", "Send my scores", "value=\"NOT_SEEN\"")
                .contains(fornix().step("TF09").sentence(4))
                .doesNotContain("<a href=\"Teaching", "??");
        assertThat(page(path, director)).contains("Close this reference case").doesNotContain("Send my scores");
    }

    @Test
    void whoScoredAndLeftIsStillOneOfThoseAsked() throws Exception {
        SignedIn other = here.another("Dr Hesper Vantrelle", Role.SUPERVISOR);
        String path = added("REF-1");
        score(path, brannock, step -> 3);
        score(path, other, step -> 3);
        here.organisation()
                .in(() -> transaction.execute(
                        status -> jdbc.sql("update programme_role set ended_at = now() where person_id = :person")
                                .param("person", other.personId())
                                .update()));
        assertThat(page("/reference-cases", director)).contains("2 of 2").doesNotContain("2 of 1");
    }

    @Test
    void scoresThatAreNotCompleteComeBackAsTyped() throws Exception {
        String path = added("REF-1");
        MockHttpServletResponse refused = send(path + "/scores", brannock, Map.of("level.TF09", "4"));
        assertThat(refused.getStatus()).isEqualTo(422);
        assertThat(refused.getContentAsString())
                .contains((fornix().steps().size() - 1) + " steps have no answer; the first is")
                .containsPattern("name=\"level.TF09\" value=\"4\"[^>]*checked=\"checked\"")
                .doesNotContain("??");
    }

    @Test
    void untouchedStepsAreNotSeenWhenTheSupervisorSaysSo() throws Exception {
        String path = added("REF-1");
        MockHttpServletResponse kept = send(
                path + "/scores", brannock, Map.of("level.TF09", "4", "level.TF10", "NOT_SEEN", "rest", "NOT_SEEN"));
        assertThat(kept.getStatus()).isEqualTo(302);
        assertThat(page(path, brannock))
                .contains("Scores of a reference case stay as they were sent.")
                .contains(fornix().step("TF09").sentence(4), "not seen")
                .doesNotContain("Send my scores", "??");
        MockHttpServletResponse again = send(path + "/scores", brannock, Map.of("level.TF09", "1", "rest", "NOT_SEEN"));
        assertThat(again.getStatus()).isEqualTo(422);
        assertThat(again.getContentAsString()).contains("What you sent first stays.");
    }

    @Test
    void fourSupervisorsAreComparedOnceTheCasesAreClosed() throws Exception {
        List<SignedIn> others = List.of(
                here.another("Dr Hesper Vantrelle", Role.SUPERVISOR),
                here.another("Dr Ludo Karsenmark", Role.SUPERVISOR),
                here.another("Dr Ines Quorral", Role.SUPERVISOR));
        for (String reference : List.of("REF-1", "REF-2")) {
            String path = added(reference);
            score(path, brannock, step -> step.equals("TF09") ? 1 : 2);
            others.forEach(other -> score(path, other, step -> step.equals("TF09") ? 4 : 3 - step.hashCode() % 2));
            assertThat(page("/my-scoring/reference", brannock)).contains("Too little to judge");
            assertThat(send(path + "/close", director, Map.of()).getStatus()).isEqualTo(302);
        }

        String own = page("/my-scoring/reference", brannock);
        assertThat(own)
                .contains("Krippendorff’s alpha for ordered levels", "You scored −")
                .contains(fornix().step("TF09").name() + " −3.00 (2)")
                .doesNotContain("Vantrelle", "Karsenmark", "Quorral", "??");
        assertThat(page("/cohort/reference", director))
                .contains("4</b>", "Dr Hesper Vantrelle", "Dr Ottilie Brannock", "−3.00 (2)")
                .doesNotContain("??");
        assertThat(page("/done?action=reference-scored", director))
                .contains("Dr Ottilie Brannock scored the reference case REF-1.");
        assertThat(page("/done?action=seen-reference-scores", director))
                .contains("Dr Corisande Delmarr read how alike");
    }

    private interface Says {
        int level(String step);
    }

    private void score(String path, SignedIn who, Says says) {
        Map<String, String> typed = new HashMap<>();
        fornix().steps().forEach(step -> typed.put("level." + step.code(), "" + says.level(step.code())));
        assertThat(send(path + "/scores", who, typed).getStatus()).isEqualTo(302);
    }

    private String added(String reference) {
        MockHttpServletResponse added = send(
                "/reference-cases",
                director,
                Map.of(
                        "programme",
                        here.programme().toString(),
                        "reference",
                        reference,
                        "title",
                        "An even flap",
                        "procedure",
                        Procedures.TRAB_FORNIX,
                        "band",
                        "B",
                        "film",
                        "Teaching drive, folder of flaps.",
                        "closesOn",
                        today.plusDays(7).toString()));
        assertThat(added.getStatus()).isEqualTo(302);
        String path = String.valueOf(added.getRedirectedUrl());
        assertThat(UUID.fromString(path.substring(path.lastIndexOf('/') + 1))).isNotNull();
        return path;
    }

    private Rubric fornix() {
        return here.organisation()
                .in(() -> rubrics.current(Procedures.TRAB_FORNIX))
                .rubric();
    }

    private String page(String path, SignedIn who) throws Exception {
        MockHttpServletResponse answer = answer(get(path), who);
        assertThat(answer.getStatus()).isEqualTo(200);
        return answer.getContentAsString();
    }

    private MockHttpServletResponse send(String path, SignedIn who, Map<String, String> typed) {
        MockHttpServletRequestBuilder request = post(path).with(csrf());
        typed.forEach(request::param);
        return answer(request, who);
    }

    private MockHttpServletResponse answer(MockHttpServletRequestBuilder request, SignedIn who) {
        try {
            return mvc.perform(request.with(LogIn.as(who))).andReturn().getResponse();
        } catch (Exception e) {
            throw new AssertionError(e);
        }
    }
}
