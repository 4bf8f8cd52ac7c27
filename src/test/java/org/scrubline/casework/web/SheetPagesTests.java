package org.scrubline.casework.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import jakarta.servlet.http.Cookie;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.Part;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.SheetChange;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.Sheets;
import org.scrubline.casework.StepState;
import org.scrubline.casework.StepState.NotSeen;
import org.scrubline.casework.StepState.Scored;
import org.scrubline.casework.Supervision;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Procedures;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.MvcResult;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

@ScrublineTest
class SheetPagesTests {

    private static final Instant ENDED = Instant.parse("2026-03-12T18:40:00Z");

    @Autowired
    MockMvc mockMvc;

    @Autowired
    Sheets sheets;

    @Autowired
    SheetFixture fixture;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    ScrublineClock clock;

    Theatre theatre;
    UUID id;

    @BeforeEach
    void openASheet() {
        theatre = fixture.theatre(organisations);
        id = fixture.open(theatre, Procedures.TRAB_FORNIX, ENDED);
    }

    @Test
    void theListShowsAgeProgressAndLateness() throws Exception {
        change(new SheetChange.SetStep("TF01", new Scored(4)));
        String fresh = list(theatre.supervisor(), Duration.ofHours(5));
        assertThat(fresh)
                .contains("href=\"/sheets/" + id + "\"", "F. Hallinor", "5 hours ago", "1 of 19")
                .contains("left eye, ended 12 Mar 2026, 18:40 GMT")
                .contains("in time for another 2 days")
                .doesNotContain("late; can be signed");
        assertThat(list(theatre.supervisor(), Duration.ofHours(70))).contains("in time for another 2 hours");
        assertThat(list(theatre.supervisor(), Duration.ofHours(72).plusSeconds(1)))
                .contains("3 days ago", "late; can be signed for another 10 days");
        assertThat(list(theatre.supervisor(), Duration.ofDays(14).plusSeconds(1)))
                .contains("closed: ask your programme director for a release");
    }

    @Test
    void theListSaysWhenThereIsNothingToScore() throws Exception {
        SignedIn idle = theatre.organisation().join("Bela Castor", Role.SUPERVISOR);
        assertThat(list(idle, Duration.ofHours(1))).contains("Nothing to score").doesNotContain("/sheets/");
    }

    @Test
    void onlyASupervisorHasTheListAndTheNavigationEntry() throws Exception {
        assertThat(perform(get("/to-score"), theatre.trainee()).getStatus()).isEqualTo(404);
        assertThat(body(get("/to-score"), theatre.supervisor())).contains("href=\"/to-score\" aria-current=\"page\"");
    }

    @Test
    void nothingIsChosenOnANewSheet() throws Exception {
        String page = sheet();
        assertThat(page)
                .contains("Score F. Hallinor", "band B", "Confirm as logged", "placeholder=\"–\"")
                .contains("So far: no verdict, 10 critical steps still open")
                .contains("Supports, does not replace, the judgement of licensed supervisors and local policy.")
                .doesNotContain("checked=\"checked\"");
        assertThat(page.split("type=\"number\"", -1).length).isGreaterThan(10);
        assertThat(page.split("name=\"step\\.TF", -1)).hasSize(1 + 19 * 8);
    }

    @Test
    void onlyThePhaseThatComesNextIsOpen() throws Exception {
        assertThat(sheet())
                .contains("<details class=\"phase\" id=\"phase-PREPARATION\" open=\"open\">")
                .contains("<details class=\"phase\" id=\"phase-EXPOSURE\">");
        save("step.TF01", "4", "step.TF02", "NOT_SEEN");
        assertThat(sheet())
                .contains("<details class=\"phase\" id=\"phase-PREPARATION\">")
                .contains("<details class=\"phase\" id=\"phase-EXPOSURE\" open=\"open\">");
    }

    @Test
    void theWholeSheetIsSavedWithoutScript() throws Exception {
        MockHttpServletResponse answer = save(
                "role", "AS_LOGGED",
                "step.TF01", "4",
                "step.TF02", "BY_SUPERVISOR",
                "step.TF03", "NOT_PART",
                "step.TF04", "NOT_SEEN",
                "measure.TF02.TF02-DISTANCE", "1,5",
                "measure.TF01.TF01-PAUSE", "1",
                "event.code", "BLEEDING",
                "event.step", "TF05",
                "event.action", "Cautery.",
                "strength", "Calm hands.",
                "nextStep.pick", "Traction suture: Loosen before the chamber is opened.");
        assertThat(answer.getRedirectedUrl()).isEqualTo("/sheets/" + id);
        Sheet sheet = read();
        assertThat(sheet.confirmedPart()).isEqualTo(Part.WHOLE_CASE);
        assertThat(sheet.givenSupervision()).isEqualTo(Supervision.SCRUBBED);
        assertThat(sheet.step("TF01")).isEqualTo(new Scored(4));
        assertThat(sheet.step("TF04")).isEqualTo(new NotSeen());
        assertThat(sheet.steps()).hasSize(4);
        assertThat(sheet.measures())
                .containsEntry("TF02-DISTANCE", new BigDecimal("1.5"))
                .containsEntry("TF01-PAUSE", BigDecimal.ONE);
        assertThat(sheet.events()).hasSize(1);
        assertThat(sheet.strength()).isEqualTo("Calm hands.");
        assertThat(sheet.nextStep()).isEqualTo("Traction suture: Loosen before the chamber is opened.");
        assertThat(sheet.lockVersion()).isEqualTo(1);
        assertThat(sheet())
                .contains("F. Hallinor did the whole case; you were scrubbed.")
                .contains("Bleeding beyond usual; Bleeding control; Cautery.")
                .containsPattern("name=\"step.TF01\" value=\"4\"[^>]*checked=\"checked\"");
    }

    @Test
    void buttonsWorkWithoutScriptToo() throws Exception {
        save("step.TF03", "4", "rest", "EXPOSURE:NOT_SEEN");
        assertThat(read().step("TF03")).isEqualTo(new Scored(4));
        assertThat(read().step("TF04")).isEqualTo(new NotSeen());
        save("clear", "TF04");
        assertThat(read().step("TF04")).isEqualTo(StepState.blank());
        save("clear", "TF05");
        save("event.code", "TAKEOVER", "event.step", "TF04", "event.reason", "SAFETY");
        assertThat(sheet()).contains("after takeover", "So far: not yet safe", "for safety");
        save("event.remove", read().events().get(0).id().toString());
        assertThat(read().events()).isEmpty();
    }

    @Test
    void aFormSentUnchangedChangesNothing() throws Exception {
        save("step.TF04", "3", "measure.TF02.TF02-DISTANCE", "1.5");
        save("event.code", "TAKEOVER", "event.step", "TF03", "event.reason", "TIME");
        Sheet before = read();
        save("step.TF03", "1", "step.TF04", "3", "step.TF05", "BY_SUPERVISOR", "measure.TF02.TF02-DISTANCE", "1.5");
        assertThat(read()).isEqualTo(before);
    }

    @Test
    void reviewComesAfterSaving() throws Exception {
        MockHttpServletResponse answer = save("step.TF01", "4", "next", "review");
        assertThat(answer.getRedirectedUrl()).isEqualTo("/sheets/" + id + "/review");
        assertThat(read().step("TF01")).isEqualTo(new Scored(4));
    }

    @Test
    void whatCannotBeKeptIsExplainedAndStaysInTheForm() throws Exception {
        MockHttpServletResponse answer = save(
                "step.TF01", "4",
                "step.TF02", "9",
                "measure.TF02.TF02-DISTANCE", "wide",
                "event.code", "TAKEOVER",
                "strength", "Calm hands.");
        assertThat(answer.getStatus()).isEqualTo(422);
        assertThat(answer.getContentAsString())
                .contains("class=\"error-summary\"", "href=\"#step-TF02\"", "href=\"#measure-TF02-TF02-DISTANCE\"")
                .contains("value=\"wide\"", "Calm hands.")
                .containsPattern("name=\"step.TF01\" value=\"4\"[^>]*checked=\"checked\"");
        assertThat(read().lockVersion()).isZero();
        MockHttpServletResponse takeover = save("event.code", "TAKEOVER", "event.action", "Took the needle.");
        assertThat(takeover.getStatus()).isEqualTo(422);
        assertThat(takeover.getContentAsString())
                .contains("href=\"#events\"", "Choose the step that was taken over.", "value=\"Took the needle.\"");
    }

    @Test
    void aStaleFormShowsBothVersions() throws Exception {
        change(new SheetChange.SetStep("TF01", new Scored(4)));
        MockHttpServletResponse answer = perform(
                post("/sheets/" + id)
                        .param("version", "0")
                        .param("step.TF01", "2")
                        .with(csrf()),
                theatre.supervisor());
        assertThat(answer.getStatus()).isEqualTo(409);
        assertThat(answer.getContentAsString()).contains("Plan and ready", "<td>2</td>", "<td>4</td>", "/sheets/" + id);
        assertThat(read().step("TF01")).isEqualTo(new Scored(4));
    }

    @Test
    void textThatMayNameAPatientIsKeptOnceItsWriterHasReadItAgain() throws Exception {
        Cookie[] visit = visit();
        MvcResult first = strength("Mr Tarn, 12345678, went well", visit);
        assertThat(first.getResponse().getStatus()).isEqualTo(422);
        assertThat(first.getResponse().getContentAsString())
                .contains("href=\"#strength\"", "send it again as it is.", "Mr Tarn, 12345678, went well</textarea>");
        assertThat(read().strength()).isEmpty();

        strength("Mr Tarn, 12345678, went well", visit);

        assertThat(read().strength()).isEqualTo("Mr Tarn, 12345678, went well");
        assertThat(body(get("/sheets/" + id).cookie(visit), theatre.supervisor()))
                .contains("class=\"notice notice-careful\"", "title and a name", "a long number");
        assertThat(body(get("/sheets/" + id).cookie(visit), theatre.supervisor()))
                .as("warned once")
                .doesNotContain("notice-careful");
    }

    @Test
    void aDateOfBirthIsRefusedHoweverOftenItIsSent() throws Exception {
        Cookie[] visit = visit();
        strength("DOB 03/07/1951", visit);
        MvcResult second = strength("DOB 03/07/1951", visit);
        assertThat(second.getResponse().getStatus()).isEqualTo(422);
        assertThat(second.getResponse().getContentAsString()).contains("This text holds a date of birth.");
        assertThat(read().strength()).isEmpty();
    }

    @Test
    void everyReasonIsSaidAtOnce() throws Exception {
        MockHttpServletResponse answer =
                save("step.TF02", "9", "measure.TF02.TF02-DISTANCE", "20000", "event.code", "TAKEOVER");
        assertThat(answer.getStatus()).isEqualTo(422);
        assertThat(answer.getContentAsString())
                .contains("Choose a level from 1 to 5")
                .contains("enter a number from 0 to 9999.")
                .contains("Choose the step that was taken over.", "Say why you took over");
        assertThat(read().lockVersion()).isZero();
    }

    @Test
    void unequalSpongesAreSaidAtTheStepThatCountsThemOut() throws Exception {
        change(new SheetChange.SetMeasure("TF06-PIECES", new BigDecimal("4")));
        change(new SheetChange.SetMeasure("TF07-PIECES", new BigDecimal("3")));
        assertThat(sheet()).contains("4 sponge pieces in, 3 out: count again.");
        change(new SheetChange.SetMeasure("TF07-PIECES", new BigDecimal("4")));
        assertThat(sheet()).doesNotContain("count again");
    }

    @Test
    void stepsOfAConversionAreFoldedAway() throws Exception {
        UUID deep = fixture.open(theatre, Procedures.DEEP_SCLERECTOMY, ENDED);
        assertThat(body(get("/sheets/" + deep), theatre.supervisor()))
                .contains("Not part of this case unless converted");
        assertThat(sheet()).doesNotContain("unless converted");
    }

    @Test
    void everyoneElseGetsTheSameNotFound() throws Exception {
        SignedIn colleague = theatre.organisation().join("Bela Castor", Role.SUPERVISOR);
        SignedIn elsewhere = fixture.theatre(organisations).supervisor();
        for (SignedIn who : List.of(colleague, theatre.trainee(), elsewhere)) {
            String unknown = main(body(get("/sheets/" + UUID.randomUUID()), who));
            assertThat(perform(get("/sheets/" + id), who).getStatus()).isEqualTo(404);
            assertThat(main(body(get("/sheets/" + id), who))).isEqualTo(unknown);
            MockHttpServletRequestBuilder save = post("/sheets/" + id)
                    .param("version", "0")
                    .param("step.TF01", "4")
                    .with(csrf());
            assertThat(perform(save, who).getStatus()).isEqualTo(404);
            String tap = "{\"tap\":\"" + UUID.randomUUID() + "\",\"version\":0,\"fields\":{\"step.TF01\":\"4\"}}";
            assertThat(perform(post("/sheets/" + id + "/taps").content(tap).with(csrf()), who)
                            .getStatus())
                    .isEqualTo(404);
        }
        assertThat(read().lockVersion()).isZero();
        assertThat(perform(get("/sheets/none"), theatre.supervisor()).getStatus())
                .isEqualTo(404);
    }

    @Test
    void aFormWithoutItsVersionIsNoServerError() throws Exception {
        assertThat(perform(post("/sheets/" + id).param("step.TF01", "4").with(csrf()), theatre.supervisor())
                        .getStatus())
                .isEqualTo(400);
        assertThat(perform(post("/sheets/" + id).param("version", "x").with(csrf()), theatre.supervisor())
                        .getStatus())
                .isEqualTo(400);
        assertThat(perform(post("/sheets/" + id).param("version", "0"), theatre.supervisor())
                        .getStatus())
                .as("no token")
                .isEqualTo(403);
    }

    private String list(SignedIn who, Duration age) throws Exception {
        return clock.at(ENDED.plus(age), () -> {
            try {
                return body(get("/to-score"), who);
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        });
    }

    private String sheet() throws Exception {
        return body(get("/sheets/" + id), theatre.supervisor());
    }

    private MockHttpServletResponse save(String... fields) throws Exception {
        MockHttpServletRequestBuilder request =
                post("/sheets/" + id).param("version", Integer.toString(read().lockVersion()));
        for (int i = 0; i < fields.length; i += 2) {
            request.param(fields[i], fields[i + 1]);
        }
        return perform(request.with(csrf()), theatre.supervisor());
    }

    private void change(SheetChange change) {
        theatre.organisation()
                .in(() -> sheets.change(theatre.supervisor(), id, read().lockVersion(), change)
                        .orThrow());
    }

    private Sheet read() {
        return theatre.organisation().in(() -> sheets.get(id));
    }

    private String body(MockHttpServletRequestBuilder request, SignedIn who) throws Exception {
        return perform(request, who).getContentAsString();
    }

    /** The page without its frame, which differs from person to person. */
    private static String main(String page) {
        return page.substring(page.indexOf("<main"), page.indexOf("</main>"));
    }

    /** The cookies of a session, as every log-in in a browser has one. */
    private Cookie[] visit() throws Exception {
        return mockMvc.perform(
                        post("/sheets/" + id).param("version", "0").with(csrf()).with(LogIn.as(theatre.supervisor())))
                .andReturn()
                .getResponse()
                .getCookies();
    }

    private MvcResult strength(String text, Cookie... visit) throws Exception {
        return mockMvc.perform(post("/sheets/" + id)
                        .param("version", "0")
                        .param("strength", text)
                        .cookie(visit)
                        .with(csrf())
                        .with(LogIn.as(theatre.supervisor())))
                .andReturn();
    }

    private MockHttpServletResponse perform(MockHttpServletRequestBuilder request, SignedIn who) throws Exception {
        return mockMvc.perform(
                        request.accept(MediaType.TEXT_HTML, MediaType.ALL).with(LogIn.as(who)))
                .andReturn()
                .getResponse();
    }
}
