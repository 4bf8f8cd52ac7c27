package org.scrubline.platform.web;

import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

/** A page that tells of a failure leaves a person where they were: logged in, with the way to every other page. */
@ScrublineTest
class FailurePagesTests {

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    /** A page of another role, and an address with no id in it. */
    @ParameterizedTest
    @ValueSource(strings = {"/people", "/progress/no-id"})
    void keepTheNavigationOfWhoeverIsLoggedIn(String page) throws Exception {
        SignedIn supervisor = organisations.open().join("Ansel Verrin", Role.SUPERVISOR);
        mockMvc.perform(get(page).with(LogIn.as(supervisor)))
                .andExpect(status().isNotFound())
                .andExpect(content()
                        .string(allOf(
                                containsString("Ansel Verrin"),
                                containsString("href=\"/to-score\""),
                                not(containsString("href=\"/people\"")))));
    }

    @Test
    void askNobodyElseWhoTheyAre() throws Exception {
        mockMvc.perform(get("/js/" + UUID.randomUUID()))
                .andExpect(status().isNotFound())
                .andExpect(content().string(allOf(containsString("<main"), not(containsString("/logout")))));
    }
}
