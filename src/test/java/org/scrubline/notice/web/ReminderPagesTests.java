package org.scrubline.notice.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.time.Duration;
import java.time.Instant;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.notice.Reminders;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.jobs.JobsNow;
import org.scrubline.platform.jobs.RecurringJob;
import org.scrubline.rubric.Procedures;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

@ScrublineTest
class ReminderPagesTests {

    private static final Instant ENDED = Instant.parse("2026-01-08T12:00:00Z");

    @Autowired
    MockMvc mvc;

    @Autowired
    Reminders reminders;

    @Autowired
    JobsNow jobs;

    @Autowired
    @Qualifier("missingScoresJob")
    RecurringJob job;

    @Autowired
    SheetFixture fixture;

    @Autowired
    ScrublineClock clock;

    @Autowired
    TestOrganisations organisations;

    Theatre theatre;

    @BeforeEach
    void openATheatre() {
        theatre = fixture.theatre(organisations);
    }

    @Test
    void thePageIsEmptyUntilAScoreIsADayOldAndThenTheNavigationCountsIt() throws Exception {
        UUID sheet = fixture.open(theatre, Procedures.TRAB_FORNIX, ENDED);
        assertThat(page("/reminders", theatre.supervisor()))
                .contains("No score is missing")
                .doesNotContainPattern("Reminders [0-9]");

        clock.at(ENDED.plus(Duration.ofHours(73)), () -> {
            jobs.run(job);
            return true;
        });

        assertThat(page("/reminders", theatre.supervisor()))
                .contains("href=\"/sheets/" + sheet + "\"", "Fenna Hallinor", "A signature is a late entry now.")
                .containsPattern("Reminders 1</a>");
        assertThat(page("/to-score", theatre.supervisor())).containsPattern("Reminders 1</a>");
    }

    @Test
    void everyoneSetsTheirOwnHours() throws Exception {
        assertThat(page("/my-notices", theatre.supervisor()))
                .contains("value=\"20:00\"", "value=\"07:00\"", "No mail from this server.");
        MockHttpServletResponse kept = send("22:00", "06:30", "8", "o.brannock@hospital.example");
        assertThat(kept.getRedirectedUrl()).isEqualTo("/my-notices");
        assertThat(page("/my-notices", theatre.supervisor()))
                .contains("value=\"22:00\"", "value=\"06:30\"", "o.brannock@hospital.example")
                .containsPattern("value=\"8\"\\s+selected=\"selected\"");
    }

    @Test
    void whatCannotBeKeptIsExplainedAndNothingIsLost() throws Exception {
        MockHttpServletResponse answer = send("late", "06:30", "99x", "nobody");
        assertThat(answer.getStatus()).isEqualTo(422);
        assertThat(answer.getContentAsString())
                .contains("Enter a time such as 20:00.", "Choose an hour of the day.", "value=\"nobody\"");
        assertThat(send("20:00", "06:30", "7", "nobody").getContentAsString()).contains("Enter a mail address");
        assertThat(theatre.organisation()
                        .in(() -> reminders.settings(theatre.supervisor().personId()))
                        .mailAddress())
                .isEmpty();
    }

    @Test
    void nobodyButASupervisorHasReminders() throws Exception {
        for (String address : new String[] {"/reminders", "/my-notices"}) {
            assertThat(perform(get(address), theatre.trainee()).getStatus()).isEqualTo(404);
        }
        assertThat(perform(post("/my-notices"), theatre.trainee()).getStatus()).isEqualTo(404);
    }

    private MockHttpServletResponse send(String from, String until, String hour, String address) throws Exception {
        return perform(
                post("/my-notices")
                        .param("quietFrom", from)
                        .param("quietUntil", until)
                        .param("digestHour", hour)
                        .param("mailOn", "true")
                        .param("mailAddress", address),
                theatre.supervisor());
    }

    private String page(String address, SignedIn who) throws Exception {
        MockHttpServletResponse response = perform(get(address), who);
        assertThat(response.getStatus()).isEqualTo(200);
        assertThat(response.getContentAsString()).doesNotContain("??");
        return response.getContentAsString();
    }

    private MockHttpServletResponse perform(MockHttpServletRequestBuilder request, SignedIn who) throws Exception {
        return mvc.perform(request.with(csrf()).with(LogIn.as(who))).andReturn().getResponse();
    }
}
