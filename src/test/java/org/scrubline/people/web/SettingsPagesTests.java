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

import java.util.UUID;
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
class SettingsPagesTests {

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    TestOrganisation organisation;
    UUID programme;
    SignedIn director;

    @BeforeEach
    void openAProgramme() {
        organisation = organisations.open();
        programme = organisation.programme().id();
        director = organisation.join("Corisande Delmarr", Role.DIRECTOR);
    }

    @Test
    void theListNamesEachSettingItsValueAndItsDefault() throws Exception {
        page("/settings", director)
                .andExpect(status().isOk())
                .andExpect(content()
                        .string(allOf(
                                containsString("Late entry after"),
                                containsString("72 h"),
                                containsString("/scorer-training?programme=" + programme),
                                not(containsString("??")))));
    }

    @Test
    void aChangeIsShownWithItsReasonWhoAndHistory() throws Exception {
        page("/settings/LATE_AFTER", director)
                .andExpect(
                        content().string(allOf(containsString("Never changed"), containsString("from 1 h to 168 h"))));
        change(director, "48", "We agreed on two days.")
                .andExpect(redirectedUrl("/settings/LATE_AFTER?programme=" + programme));

        page("/settings", director)
                .andExpect(content()
                        .string(allOf(
                                containsString("48 h"),
                                containsString("We agreed on two days."),
                                containsString("Corisande Delmarr"))));
        page("/settings/LATE_AFTER", director)
                .andExpect(content().string(allOf(containsString("48 h"), containsString("We agreed on two days."))));
    }

    @Test
    void aRefusedChangeKeepsWhatWasTyped() throws Exception {
        change(director, "500", "We agreed on weeks.")
                .andExpect(status().isUnprocessableContent())
                .andExpect(content()
                        .string(allOf(
                                containsString("Enter a whole number from 1 to 168."),
                                containsString("value=\"500\""),
                                containsString("We agreed on weeks."),
                                containsString("href=\"#value\""))));
    }

    @Test
    void aSettingThatIsYesOrNoIsChosen() throws Exception {
        page("/settings/INTRODUCTION_FIRST", director)
                .andExpect(content().string(allOf(containsString("<select"), containsString(">yes</option>"))));
    }

    @Test
    void forEveryoneElseThereIsNoSuchPage() throws Exception {
        SignedIn supervisor = organisation.join("Ottilie Brannock", Role.SUPERVISOR);
        for (String path : new String[] {"/settings", "/settings/LATE_AFTER"}) {
            page(path, supervisor).andExpect(status().isNotFound());
        }
        change(supervisor, "48", "Because.").andExpect(status().isNotFound());
        page("/settings/NO_SUCH_KEY", director).andExpect(status().isNotFound());
        page("/settings?programme=" + UUID.randomUUID(), director).andExpect(status().isNotFound());
    }

    private ResultActions page(String path, SignedIn who) throws Exception {
        return mockMvc.perform(get(path).with(LogIn.as(who)));
    }

    private ResultActions change(SignedIn who, String value, String reason) throws Exception {
        return mockMvc.perform(post("/settings/LATE_AFTER")
                .param("programme", programme.toString())
                .param("value", value)
                .param("reason", reason)
                .with(LogIn.as(who))
                .with(csrf()));
    }
}
