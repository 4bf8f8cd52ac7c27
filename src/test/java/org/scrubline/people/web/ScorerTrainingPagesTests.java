package org.scrubline.people.web;

import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;

@ScrublineTest
class ScorerTrainingPagesTests {

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    TestOrganisation organisation;
    SignedIn director;

    @BeforeEach
    void open() {
        organisation = organisations.open();
        director = organisation.join("Corisande Delmarr", Role.DIRECTOR);
    }

    @Test
    void whoHasNoIntroductionIsNamedWithHowMany() throws Exception {
        SignedIn supervisor = organisation.join("Ottilie Brannock", Role.SUPERVISOR);
        organisation.join("Ansel Verrin", Role.SUPERVISOR);
        introduce(director, supervisor, "2026-03-12")
                .andExpect(redirectedUrl(
                        "/scorer-training?programme=" + organisation.programme().id()));
        page(director)
                .andExpect(content()
                        .string(allOf(
                                containsString("1 of 2 supervisors have none recorded."),
                                containsString("<li>Ansel Verrin</li>"),
                                not(containsString("<li>Ottilie Brannock</li>")),
                                containsString("12 Mar 2026"))));
    }

    @Test
    void aTraineeWhoMayTeachOneDayIsIntroducedToo() throws Exception {
        SignedIn trainee = organisation.join("Fenna Hallinor", Role.TRAINEE);
        introduce(director, trainee, "2026-03-12").andExpect(status().is3xxRedirection());
        page(director)
                .andExpect(content()
                        .string(allOf(
                                containsString("Fenna Hallinor"),
                                containsString("Supervisors appear here once they belong to the programme."))));
    }

    @Test
    void aDayThatIsNoneIsRefusedAndKept() throws Exception {
        SignedIn supervisor = organisation.join("Ottilie Brannock", Role.SUPERVISOR);
        introduce(director, supervisor, "never")
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Enter the day of the introduction")));
        SignedIn stranger = organisations.open().join("Somebody Else", Role.SUPERVISOR);
        introduce(director, stranger, "2026-03-12")
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Choose a supervisor or trainee of this programme.")));
    }

    @Test
    void anAdministratorSeesTheListAndNoForm() throws Exception {
        SignedIn administrator = organisation.join("Pell Ormandine", Role.ADMINISTRATOR);
        SignedIn supervisor = organisation.join("Ottilie Brannock", Role.SUPERVISOR);
        page(administrator)
                .andExpect(status().isOk())
                .andExpect(content().string(not(containsString("action=\"/scorer-training\""))));
        introduce(administrator, supervisor, "2026-03-12").andExpect(status().isNotFound());
        page(supervisor).andExpect(status().isNotFound());
    }

    private ResultActions page(SignedIn who) throws Exception {
        return mockMvc.perform(get("/scorer-training").with(LogIn.as(who)));
    }

    private ResultActions introduce(SignedIn who, SignedIn person, String day) throws Exception {
        return mockMvc.perform(post("/scorer-training")
                .param("supervisor", person.personId().toString())
                .param("day", day)
                .with(LogIn.as(who))
                .with(csrf()));
    }
}
