package org.scrubline.retention.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.retention.Retention;
import org.scrubline.retention.RetentionTerms;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;

@ScrublineTest
class RetentionPagesTests {

    @Autowired
    MockMvc mvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    Retention retention;

    TestOrganisation organisation;
    SignedIn director;
    SignedIn administrator;
    SignedIn trainee;

    @BeforeEach
    void openAProgramme() {
        organisation = organisations.open();
        director = organisation.join("Corisande Delmarr", Role.DIRECTOR);
        administrator = organisation.join("Pell Ormandine", Role.ADMINISTRATOR);
        trainee = organisation.join("Fenna Hallinor", Role.TRAINEE);
    }

    @Test
    void thePageSaysHowLongWhatIsKept() throws Exception {
        assertThat(page(director))
                .contains("An open sheet without a change: 90 days", "training and 6 years after it")
                .contains("as long as the newest record they prove", "Exported files: 30 days.")
                .contains("Nobody is or was under a hold.", "Keep records this long")
                .doesNotContain("??");
        assertThat(page(administrator)).contains("90 days").doesNotContain("Keep records this long");
        mvc.perform(get("/retention").with(LogIn.as(trainee))).andExpect(status().isNotFound());
    }

    @Test
    void aChangeHoldsFromNowOnAndIsWrittenDownOnce() throws Exception {
        terms(director, "1200", "8", "30").andExpect(redirectedUrl("/retention"));
        terms(director, "1200", "8", "30").andExpect(redirectedUrl("/retention"));

        assertThat(page(director)).contains("An open sheet without a change: 1200 days", "training and 8 years");
        assertThat(inForce()).isEqualTo(new RetentionTerms(1200, 8, 30));
        String done = mvc.perform(get("/done?action=retention-changed").with(LogIn.as(director)))
                .andReturn()
                .getResponse()
                .getContentAsString();
        assertThat(done).containsOnlyOnce("from 90 d / 6 y / 30 d to 1200 d / 8 y / 30 d.");
    }

    @ParameterizedTest
    @CsvSource({
        "29, 6, 30, Enter a number from 30 to 3650.",
        "3651, 6, 30, Enter a number from 30 to 3650.",
        "90, 0, 30, Enter a number from 1 to 100.",
        "90, 6, 366, Enter a number from 1 to 365.",
        "'', 6, 30, Enter a whole number.",
        "90, 6.5, 30, Enter a whole number.",
        "90, 6, 99999999999, Enter a whole number.",
    })
    void timesOutOfRangeAreRefusedAndNothingChanges(String drafts, String records, String exports, String sentence)
            throws Exception {
        String page = terms(director, drafts, records, exports)
                .andExpect(status().is(422))
                .andReturn()
                .getResponse()
                .getContentAsString();
        assertThat(page).contains(sentence, "value=\"" + records + "\"");
        assertThat(inForce()).isEqualTo(RetentionTerms.DEFAULT);
    }

    @ParameterizedTest
    @CsvSource({"30, 1, 1", "3650, 100, 365"})
    void timesAtTheEdgesAreTaken(String drafts, String records, String exports) throws Exception {
        terms(director, drafts, records, exports).andExpect(redirectedUrl("/retention"));
        assertThat(inForce().draftDays()).isEqualTo(Integer.parseInt(drafts));
    }

    @Test
    void onlyADirectorChangesTheTimes() throws Exception {
        terms(administrator, "120", "8", "30").andExpect(status().isNotFound());
        terms(trainee, "120", "8", "30").andExpect(status().isNotFound());
        assertThat(inForce()).isEqualTo(RetentionTerms.DEFAULT);
    }

    @Test
    void aHoldIsSetOnceAndEnded() throws Exception {
        assertThat(held()).isFalse();
        hold(administrator, trainee.personId().toString(), "A contest is open.").andExpect(redirectedUrl("/retention"));
        assertThat(held()).isTrue();
        assertThat(page(director)).contains("A contest is open.", "set by Pell Ormandine", "End this hold");

        hold(director, trainee.personId().toString(), "Once more.").andExpect(status().is(422));

        String page = page(director);
        int at = page.indexOf("/retention/holds/");
        String end = page.substring(at, page.indexOf('"', at));
        mvc.perform(post(end).with(LogIn.as(trainee)).with(csrf())).andExpect(status().isNotFound());
        assertThat(held()).isTrue();
        for (int twice = 0; twice < 2; twice++) {
            mvc.perform(post(end).with(LogIn.as(director)).with(csrf())).andExpect(redirectedUrl("/retention"));
        }
        assertThat(held()).isFalse();
        assertThat(page(director)).contains("by Corisande Delmarr").doesNotContain("End this hold");
        String own = mvc.perform(get("/seen.csv").with(LogIn.as(trainee)))
                .andReturn()
                .getResponse()
                .getContentAsString();
        assertThat(own)
                .containsOnlyOnce(",hold-set,")
                .containsOnlyOnce(",hold-ended,")
                .contains("A contest is open.");
    }

    @ParameterizedTest
    @CsvSource({"'', Because, Choose a trainee", "me, Because, Choose a trainee", "trainee, '', Say why"})
    void aHoldNeedsATraineeAndAReason(String who, String reason, String sentence) throws Exception {
        String id = who.equals("trainee") ? trainee.personId().toString() : who;
        String page = hold(director, id, reason)
                .andExpect(status().is(422))
                .andReturn()
                .getResponse()
                .getContentAsString();
        assertThat(page).contains(sentence);
        assertThat(held()).isFalse();
    }

    @Test
    void aHoldOfAnotherOrganisationCannotBeEnded() throws Exception {
        SignedIn stranger = organisations.open().join("Asta Brevonne", Role.DIRECTOR);
        UUID hold = organisation.in(() -> retention
                .hold(director, organisation.programme().id(), trainee.personId(), "A contest is open.")
                .orThrow()
                .id());
        mvc.perform(post("/retention/holds/" + hold + "/end")
                        .with(LogIn.as(stranger))
                        .with(csrf()))
                .andExpect(status().isNotFound());
        assertThat(held()).isTrue();
    }

    private boolean held() {
        return organisation.in(() -> retention.held(trainee.personId()));
    }

    private RetentionTerms inForce() {
        return organisation.in(() -> retention.terms(organisation.programme().id()));
    }

    private ResultActions terms(SignedIn who, String drafts, String records, String exports) throws Exception {
        return mvc.perform(post("/retention/terms")
                .param("draftDays", drafts)
                .param("recordYears", records)
                .param("exportDays", exports)
                .with(LogIn.as(who))
                .with(csrf()));
    }

    private ResultActions hold(SignedIn who, String traineeId, String reason) throws Exception {
        return mvc.perform(post("/retention/holds")
                .param("trainee", traineeId)
                .param("reason", reason)
                .with(LogIn.as(who))
                .with(csrf()));
    }

    private String page(SignedIn who) throws Exception {
        return mvc.perform(get("/retention").with(LogIn.as(who)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString();
    }
}
