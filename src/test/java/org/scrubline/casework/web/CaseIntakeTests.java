package org.scrubline.casework.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.scrubline.casework.Cases;
import org.scrubline.casework.DeviceCaseFixture;
import org.scrubline.casework.TestProgramme;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.Rubrics;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What a trainee's device is given for the case log, and what it is told of the cases it sends. */
@ScrublineTest
class CaseIntakeTests {

    private static final JsonMapper JSON = JsonMapper.builder().build();
    private static final String ID = "00000000-0000-4000-8000-000000000007";
    private static final String CLOCK =
            "{\"device\":\"2026-03-12T18:45:00.123Z\",\"zone\":\"Europe/London\",\"page\":5000,\"waited\":null}";

    @Autowired
    MockMvc mockMvc;

    @Autowired
    Cases cases;

    @Autowired
    Rubrics rubrics;

    @Autowired
    TestOrganisations organisations;

    TestProgramme here;

    @BeforeEach
    void openTheProgramme() {
        here = TestProgramme.open(organisations.open(), rubrics);
    }

    @Test
    void theFormOfADeviceShowsSupervisorsByTheirInitialsAndNobodysName() throws Exception {
        String page = text(here.trainee(), "/at-the-table/case-log/" + here.programme());
        String main = page.substring(page.indexOf("<main"), page.indexOf("</main>"));
        assertThat(main)
                .contains(">O. B.<", here.supervisor().personId().toString(), "data-case-log=\"" + here.programme())
                .doesNotContain("Brannock", "Hallinor", "Delmarr");
        String list = text(here.trainee(), "/at-the-table/case-log");
        assertThat(list).contains("Europe/London", "shape").doesNotContain("Brannock", "Hallinor", "Delmarr");
    }

    @Test
    void theShapeOfTheFormChangesWhenASupervisorCame() throws Exception {
        String before = shape();
        assertThat(shape()).isEqualTo(before);
        here.another("Dr Ruy Estavane", Role.SUPERVISOR);
        assertThat(shape()).isNotEqualTo(before);
    }

    @Test
    void theStepsOfAProcedureAreThoseOfTheSelfScore() throws Exception {
        String page = text(here.trainee(), "/at-the-table/case-steps/" + Procedures.TRAB_FORNIX);
        assertThat(page.split("<section class=\"step\"")).hasSize(20);
        assertThat(page).contains("name=\"level.TF01\"");
        assertThat(response(here.trainee(), "/at-the-table/case-steps/APPENDIX").getStatus())
                .isEqualTo(404);
    }

    @Test
    void whoTrainsNowhereGetsAnEmptyListAndNoForm() throws Exception {
        assertThat(text(here.supervisor(), "/at-the-table/case-log")).contains("\"programmes\":[]");
        for (String path : List.of("case-log/" + here.programme(), "case-steps/" + Procedures.TRAB_FORNIX)) {
            assertThat(response(here.supervisor(), "/at-the-table/" + path).getStatus())
                    .isEqualTo(404);
        }
    }

    @Test
    void aCaseIsEnteredOnceAndItsReceiptNamesTheContentSent() throws Exception {
        JsonNode answer = ok(send(body(Map.of())));
        assertThat(answer.path("scrubline").asString()).isEqualTo("case");
        assertThat(answer.path("submission").asString()).isEqualTo(ID);
        assertThat(ok(send(body(Map.of())))).isEqualTo(answer);
        JsonNode receipt = JSON.readTree(text(here.trainee(), "/at-the-table/cases/" + ID));
        assertThat(receipt.path("scrubline").asString()).isEqualTo("case-receipt");
        assertThat(receipt.path("contents").size()).isEqualTo(1);
        assertThat(receipt.path("contents").get(0).path("hash").asString())
                .isEqualTo(CanonicalJson.sha256(CanonicalJson.of(Map.of(
                        "fields", fields(), "person", here.trainee().personId().toString()))));
        assertThat(logged()).isEqualTo(1);
    }

    @Test
    void aCaseWithMissingAnswersIsRefusedWithEveryReasonBesideItsField() throws Exception {
        Map<String, Object> without = new HashMap<>();
        without.put(
                "fields", Map.of("programme", List.of(here.programme().toString()), "reference", List.of("Mr Tarn")));
        MockHttpServletResponse answer = send(body(without));
        assertThat(answer.getStatus()).isEqualTo(422);
        JsonNode reasons = JSON.readTree(answer.getContentAsByteArray()).path("reasons");
        assertThat(reasons.valueStream().map(reason -> reason.path("field").asString()))
                .containsExactly(
                        "reference", "procedure", "eye", "site", "supervisor", "plannedSupervision", "claimedPart");
        assertThat(logged()).isZero();
    }

    @Test
    void aCaseOfAProgrammeThePersonDoesNotTrainInIsRefused() throws Exception {
        Map<String, List<String>> elsewhere = fields();
        elsewhere.put("programme", List.of(UUID.randomUUID().toString()));
        MockHttpServletResponse answer = send(body(Map.of("fields", elsewhere)));
        assertThat(answer.getStatus()).isEqualTo(422);
        assertThat(answer.getContentAsString()).contains("not a trainee of this programme");
    }

    @Test
    void aCaseKeptByAnotherPersonIsNotTakenInThisOnesSession() throws Exception {
        MockHttpServletResponse answer =
                send(body(Map.of("person", here.supervisor().personId().toString())));
        assertThat(answer.getStatus()).isEqualTo(403);
        assertThat(answer.getContentAsString()).doesNotContain("scrubline");
        assertThat(logged()).isZero();
    }

    static Stream<Map<String, Object>> unreadable() {
        return Stream.of(
                Map.of("submission", "no id"),
                Map.of("submission", 7),
                Map.of("person", ""),
                Map.of("clock", "yesterday"),
                Map.of("clock", Map.of("device", "yesterday", "zone", "Europe/London", "page", 1, "waited", 1)),
                Map.of("clock", Map.of("device", "2026-03-12T18:45:00Z", "zone", "a\u0000b", "page", 1, "waited", 1)),
                Map.of("clock", Map.of("device", "2026-03-12T18:45:00Z", "zone", "UTC", "page", -1, "waited", 1)),
                Map.of("clock", Map.of("device", "2026-03-12T18:45:00Z", "zone", "UTC", "page", 1.5, "waited", 1)),
                Map.of("clock", Map.of("device", "-200000-01-01T00:00:00Z", "zone", "UTC", "page", 1, "waited", 1)),
                Map.of("fields", List.of()),
                Map.of("fields", Map.of("reference", "K7-204")),
                Map.of("fields", Map.of("reference", List.of())),
                Map.of("fields", Map.of("reference", List.of(4))),
                Map.of("fields", Map.of("reference", List.of("K7-204", "K7-205"))),
                Map.of("fields", Map.of("reference", List.of("K7\u0000"))),
                Map.of("fields", Map.of("diary", List.of("A long story"))),
                Map.of("fields", Map.of("reference", List.of("x".repeat(17_000)))));
    }

    @ParameterizedTest
    @MethodSource("unreadable")
    void whatIsNoCaseIsABadRequestInJson(Map<String, Object> wrong) throws Exception {
        MockHttpServletResponse answer = send(body(wrong));
        assertThat(answer.getStatus()).isEqualTo(400);
        assertThat(JSON.readTree(answer.getContentAsByteArray()).path("reasons").size())
                .isEqualTo(1);
        assertThat(logged()).isZero();
    }

    @Test
    void bytesThatAreNoJsonAreABadRequest() throws Exception {
        for (String body : List.of("", "{", "[]", "null", "{} {}", "[".repeat(15_000))) {
            assertThat(send(body).getStatus()).as(body).isEqualTo(400);
        }
    }

    @Test
    void aCaseWithoutTheTokenIsRefused() throws Exception {
        assertThat(mockMvc.perform(post("/at-the-table/cases")
                                .content(body(Map.of()))
                                .with(LogIn.as(here.trainee())))
                        .andReturn()
                        .getResponse()
                        .getStatus())
                .isEqualTo(403);
    }

    @Test
    void aCaseThatWaitsStandsUnderMyCasesAndIsPutRightOrPutAway() throws Exception {
        Map<String, List<String>> tomorrow = fields();
        tomorrow.put("endedAt", List.of("2090-01-01T10:00"));
        tomorrow.put("level.TF01", List.of("4"));
        assertThat(ok(send(body(Map.of("fields", tomorrow))))
                        .path("received")
                        .path("aside")
                        .asString())
                .isEqualTo("END_AHEAD");
        String list = text(here.trainee(), "/my-cases");
        String path = list.replaceAll("(?s).*href=\"(/cases/aside/[0-9a-f-]+)\".*", "$1");
        assertThat(text(here.trainee(), path)).contains("later than the server", "K7-204", "2090-01-01T10:00");
        assertThat(response(here.supervisor(), path).getStatus()).isEqualTo(404);

        assertThat(form(path, "2090-01-01T10:00").getStatus()).isEqualTo(422);
        assertThat(logged()).isZero();
        assertThat(form(path, "2026-03-12T18:40").getRedirectedUrl()).startsWith("/cases/");
        assertThat(logged()).isEqualTo(1);
        assertThat(form(path, "2026-03-12T18:40").getStatus()).isEqualTo(404);
        assertThat(text(here.trainee(), "/my-cases")).doesNotContain("/cases/aside/");
    }

    @Test
    void ofTwoVersionsOfOneCaseTheSecondSaysWhatTheFirstBecame() throws Exception {
        ok(send(body(Map.of())));
        Map<String, List<String>> other = fields();
        other.put("eye", List.of("LEFT"));
        ok(send(body(Map.of("fields", other))));
        String path = text(here.trainee(), "/my-cases").replaceAll("(?s).*href=\"(/cases/aside/[0-9a-f-]+)\".*", "$1");
        assertThat(text(here.trainee(), path)).contains("The first was entered as K7-204");
        assertThat(mockMvc.perform(post(path + "/put-away").with(csrf()).with(LogIn.as(here.trainee())))
                        .andReturn()
                        .getResponse()
                        .getRedirectedUrl())
                .isEqualTo("/my-cases");
        assertThat(response(here.trainee(), path).getStatus()).isEqualTo(404);
        assertThat(logged()).isEqualTo(1);
    }

    private MockHttpServletResponse form(String path, String endedAt) throws Exception {
        var request = post(path).with(csrf()).with(LogIn.as(here.trainee()));
        fields().forEach((name, texts) -> request.param(name, name.equals("endedAt") ? endedAt : texts.get(0)));
        return mockMvc.perform(request).andReturn().getResponse();
    }

    private Map<String, List<String>> fields() {
        return DeviceCaseFixture.answers(here.organisation(), here.supervisor(), "K7-204", "2026-03-12T18:40");
    }

    private String body(Map<String, Object> changed) {
        Map<String, Object> body = new HashMap<>();
        body.put("submission", ID);
        body.put("person", here.trainee().personId().toString());
        body.put("clock", JSON.readTree(CLOCK));
        body.put("fields", fields());
        body.putAll(changed);
        return JSON.writeValueAsString(body);
    }

    private int logged() {
        return here.organisation()
                .in(() -> cases.ofTrainee(here.trainee().personId()))
                .size();
    }

    private static JsonNode ok(MockHttpServletResponse answer) throws Exception {
        assertThat(answer.getStatus()).as(answer.getContentAsString()).isEqualTo(200);
        return JSON.readTree(answer.getContentAsByteArray());
    }

    private MockHttpServletResponse send(String body) throws Exception {
        return mockMvc.perform(post("/at-the-table/cases")
                        .content(body.getBytes(StandardCharsets.UTF_8))
                        .contentType(MediaType.APPLICATION_JSON)
                        .with(csrf())
                        .with(LogIn.as(here.trainee())))
                .andReturn()
                .getResponse();
    }

    private String shape() throws Exception {
        return JSON.readTree(text(here.trainee(), "/at-the-table/case-log"))
                .path("programmes")
                .get(0)
                .path("shape")
                .asString();
    }

    private String text(SignedIn who, String path) throws Exception {
        MockHttpServletResponse response = response(who, path);
        assertThat(response.getStatus()).as(path).isEqualTo(200);
        return response.getContentAsString();
    }

    private MockHttpServletResponse response(SignedIn who, String path) throws Exception {
        return mockMvc.perform(get(path).with(LogIn.as(who))).andReturn().getResponse();
    }
}
