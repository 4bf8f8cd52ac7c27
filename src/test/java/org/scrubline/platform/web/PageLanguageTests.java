package org.scrubline.platform.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.time.Instant;
import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

/** The pages are written in English, and so are their dates, whatever language a browser asks for. */
@ScrublineTest
class PageLanguageTests {

    private static final Instant SEPTEMBER = Instant.parse("2026-09-05T10:00:00Z");

    @Autowired
    MockMvc mvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    ScrublineClock clock;

    @ParameterizedTest
    @ValueSource(strings = {"en-GB", "en-US", "de-DE", "da-DK", "ar-EG"})
    void aPageAndItsDatesAreOfOneLanguage(String asked) throws Exception {
        SignedIn director = organisations.open().join("Corisande Delmarr", Role.DIRECTOR);

        String page = clock.at(SEPTEMBER, () -> {
            page("/cohort/signals", asked, director);
            return page("/done", asked, director);
        });

        assertThat(page).contains("lang=\"en\"", "5 Sept 2026, 11:00 BST");
    }

    private String page(String path, String asked, SignedIn who) {
        try {
            return mvc.perform(get(path).locale(Locale.forLanguageTag(asked)).with(LogIn.as(who)))
                    .andReturn()
                    .getResponse()
                    .getContentAsString();
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }
}
