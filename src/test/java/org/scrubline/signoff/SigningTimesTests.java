package org.scrubline.signoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.flash;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.time.Duration;
import java.time.Instant;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.SheetState;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;

/** The two limits, 72 hours and 14 days after the end of the case, from both sides. */
@ScrublineTest
class SigningTimesTests {

    private static final Instant ENDED = Instant.parse("2026-03-12T17:10:00Z");

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SheetFixture sheetFixture;

    @Autowired
    SigningFixture fixture;

    @Autowired
    SignedSheets signedSheets;

    @Autowired
    ScrublineClock clock;

    Theatre theatre;

    @BeforeEach
    void openATheatre() {
        theatre = sheetFixture.theatre(organisations);
    }

    @ParameterizedTest
    @CsvSource({"PT1H, false", "PT71H59M, false", "PT72H, false", "PT72H0.001S, true", "P13DT23H, true", "P14D, true"})
    void aSignatureMoreThan72HoursAfterTheCaseIsMarkedLate(Duration age, boolean late) throws Exception {
        UUID sheet = fixture.complete(theatre, ENDED);
        Instant at = ENDED.plus(age);
        at(at, () -> sign(sheet))
                .andExpect(status().is3xxRedirection())
                .andExpect(flash().attribute("flash", containsString(late ? "late entry" : "Signed. The trainee")));

        SignedSheet signed =
                theatre.organisation().in(() -> signedSheets.ofSheet(sheet)).orElseThrow();
        assertThat(signed.late()).isEqualTo(late);
        assertThat(signed.signedAt()).isEqualTo(at);
        assertThat(SignedContent.read(signed.content()).late()).isEqualTo(late);
        String page = mockMvc.perform(get("/signed/{id}", signed.id()).with(LogIn.as(theatre.trainee())))
                .andReturn()
                .getResponse()
                .getContentAsString();
        assertThat(page.contains("late entry, ")).isEqualTo(late);
    }

    @ParameterizedTest
    @CsvSource({"P14DT0.001S", "P30D"})
    void moreThan14DaysAfterTheCaseSigningIsClosedAndSaysWhomToAsk(Duration age) throws Exception {
        UUID sheet = fixture.complete(theatre, ENDED);
        at(
                        ENDED.plus(age),
                        () -> mockMvc.perform(get("/sheets/{id}/review", sheet).with(LogIn.as(theatre.supervisor()))))
                .andExpect(content().string(containsString("ask your programme director")));
        at(ENDED.plus(age), () -> sign(sheet))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("ask your programme director")));
        assertThat(fixture.read(theatre, sheet).state()).isEqualTo(SheetState.OPEN);
    }

    private ResultActions sign(UUID sheet) throws Exception {
        return mockMvc.perform(post("/sheets/{id}/sign", sheet)
                .param("hash", fixture.preview(theatre, sheet).contentHash())
                .param("password", TestOrganisations.PASSWORD)
                .with(LogIn.as(theatre.supervisor()))
                .with(csrf()));
    }

    private interface Request {
        ResultActions perform() throws Exception;
    }

    private ResultActions at(Instant instant, Request request) {
        return clock.at(instant, () -> {
            try {
                return request.perform();
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        });
    }
}
