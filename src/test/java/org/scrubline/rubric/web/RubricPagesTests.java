package org.scrubline.rubric.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.PublishedRubric;
import org.scrubline.rubric.RubricLibrary;
import org.scrubline.rubric.Rubrics;
import org.scrubline.rubric.Step;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.web.util.HtmlUtils;

@ScrublineTest
class RubricPagesTests {

    private static final String CAUTION = "Reference values for teaching; not clinical instructions.";

    @Autowired
    private MockMvc mvc;

    @Autowired
    private Rubrics rubrics;

    @Autowired
    private RubricLibrary library;

    @Autowired
    private TestOrganisations organisations;

    private TestOrganisation organisation;
    private SignedIn director;

    @BeforeEach
    void openAnOrganisation() {
        organisation = organisations.open();
        director = organisation.join("Corisande Delmarr", Role.DIRECTOR);
    }

    @Test
    void anEmptyListSaysWhy() throws Exception {
        assertThat(page("/rubrics", director))
                .contains("No rubric is published yet", "Until then no case can be scored");
    }

    @Test
    void theListNamesEveryPublishedVersion() throws Exception {
        organisation.in(() -> rubrics.publishLibrary(director.personId()).orThrow());

        String page = page("/rubrics", director);

        assertThat(page)
                .contains("Trabeculectomy, fornix-based flap, version 1.0", "19 steps, 10 critical", CAUTION)
                .doesNotContain("No rubric is published yet");
        assertThat(library.rubrics()).allSatisfy(rubric -> assertThat(page).contains(rubric.title()));
    }

    @Test
    void thePageSaysEveryStepSentenceSourceAndEvent() throws Exception {
        PublishedRubric published = publish(Procedures.TRAB_FORNIX);

        String page = page("/rubrics/" + published.id(), director);

        assertThat(page)
                .doesNotContain("??")
                .contains(CAUTION, "version 1.0", published.contentHash(), "Final checks", "Vitreous loss")
                .contains("Common practice, no source.", "From memory, not re-read.", "Edmunds B et al")
                .contains("Team pause done: yes.", "Pocket depth behind limbus, mm: usually 10–15; accepted 8–15.")
                .contains("blocks “independent on this case” when the reason is safety");
        for (Step step : published.rubric().steps()) {
            assertThat(page).contains("id=\"step-" + step.code() + "\"", escaped(step.name()), escaped(step.sees()));
            assertThat(step.levels()).allSatisfy(level -> assertThat(page).contains(escaped(level)));
            assertThat(step.hazards()).allSatisfy(hazard -> assertThat(page).contains(escaped(hazard)));
        }
    }

    @Test
    void conversionStepsSayThatTheyAre() throws Exception {
        PublishedRubric deep = publish(Procedures.DEEP_SCLERECTOMY);
        PublishedRubric fornix = publish(Procedures.TRAB_FORNIX);

        assertThat(page("/rubrics/" + deep.id(), director)).contains("Only in a converted case.");
        assertThat(page("/rubrics/" + fornix.id(), director)).doesNotContain("Only in a converted case.");
    }

    @Test
    void anotherOrganisationsRubricIsNotFound() throws Exception {
        PublishedRubric published = publish(Procedures.NEEDLING);
        SignedIn stranger = organisations.open().join("Thaddeus Quillmere", Role.DIRECTOR);

        mvc.perform(get("/rubrics/" + published.id()).with(LogIn.as(stranger))).andExpect(status().isNotFound());
    }

    @ParameterizedTest
    @ValueSource(strings = {"/rubrics/7a7c1c0e-3c55-4a39-8f0d-0e3f6a0d9b11", "/rubrics/nothing"})
    void anUnknownRubricIsNotFound(String path) throws Exception {
        mvc.perform(get(path).with(LogIn.as(director))).andExpect(status().isNotFound());
    }

    @Test
    void aStrangerIsSentToLogIn() throws Exception {
        mvc.perform(get("/rubrics")).andExpect(status().is3xxRedirection());
    }

    private PublishedRubric publish(String procedure) {
        UUID publisher = director.personId();
        return organisation.in(
                () -> rubrics.publish(library.rubric(procedure), publisher).orThrow());
    }

    private String page(String path, SignedIn who) throws Exception {
        return mvc.perform(get(path).with(LogIn.as(who)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString();
    }

    private static String escaped(String text) {
        return HtmlUtils.htmlEscape(text, "UTF-8");
    }
}
