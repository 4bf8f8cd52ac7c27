package org.scrubline.casework.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import jakarta.servlet.http.Cookie;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.Sheets;
import org.scrubline.casework.StepState.Scored;
import org.scrubline.rubric.Procedures;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

@ScrublineTest
class TapTests {

    private static final JsonMapper JSON = JsonMapper.builder().build();
    private static final String TAP = "00000000-0000-4000-8000-000000000001";

    @Autowired
    MockMvc mockMvc;

    @Autowired
    Sheets sheets;

    @Autowired
    SheetFixture fixture;

    @Autowired
    TestOrganisations organisations;

    Theatre theatre;
    UUID id;
    Cookie[] session = {};

    @BeforeEach
    void openASheet() {
        theatre = fixture.theatre(organisations);
        id = fixture.open(theatre, Procedures.TRAB_FORNIX, Instant.parse("2026-03-12T18:40:00Z"));
    }

    @Test
    void aTapAnswersWithTheVersionTheVerdictAndHowFar() throws Exception {
        JsonNode answer = ok(tap(0, Map.of("step.TF01", "2")));
        assertThat(answer.path("version").intValue()).isEqualTo(1);
        assertThat(answer.path("done").intValue()).isEqualTo(1);
        assertThat(answer.path("total").intValue()).isEqualTo(19);
        assertThat(answer.path("verdict").stringValue()).isEqualTo("So far: not yet safe");
        assertThat(answer.path("reasons").get(0).path("text").stringValue())
                .isEqualTo("Plan and ready, a critical step, at level 2");
        assertThat(answer.path("reasons").get(0).path("href").stringValue()).isEqualTo("#step-TF01");
        assertThat(answer.path("answers").path("TF01").stringValue()).isEqualTo("2");
        assertThat(answer.path("answers").path("TF02").stringValue()).isEmpty();
        assertThat(read().step("TF01")).isEqualTo(new Scored(2));
    }

    @Test
    void theSameTapTwiceIsOneChange() throws Exception {
        String body = body(TAP, 0, Map.of("event.code", "BLEEDING", "event.step", "TF05"));
        assertThat(ok(send(body)).path("version").intValue()).isEqualTo(1);
        assertThat(ok(send(body)).path("version").intValue()).isEqualTo(1);
        assertThat(read().events()).hasSize(1);
    }

    @Test
    void aTapOnAnOldVersionIsRefusedWithBothVersions() throws Exception {
        ok(tap(0, Map.of("step.TF01", "4")));
        MockHttpServletResponse answer = tap(0, Map.of("step.TF01", "3"));
        assertThat(answer.getStatus()).isEqualTo(409);
        JsonNode problem = JSON.readTree(answer.getContentAsByteArray());
        assertThat(problem.path("reasons").get(0).stringValue()).isEqualTo("Plan and ready: yours 3, stored 4");
        assertThat(problem.path("back").stringValue()).isEqualTo("/sheets/" + id);
    }

    @Test
    void aTapThatCannotBeKeptSaysWhy() throws Exception {
        for (Map<String, String> fields : List.of(
                Map.of("step.TF01", "6"),
                Map.of("step.TF99", "4"),
                Map.of("rest", "NOWHERE:NOT_SEEN"),
                Map.of("rest", "FLAP:4"),
                Map.of("part", "WHOLE_CASE"),
                Map.of("part", "ALL", "supervision", "SCRUBBED"),
                Map.of("measure.TF02.TF02-DISTANCE", "1e999999999"),
                Map.of("measure.TF02.TF02-DISTANCE", "1e-99999"),
                Map.of("measure.TF02.TF02-DISTANCE", "NaN"),
                Map.of("event.remove", "none"),
                Map.of("event.step", "TF01"),
                Map.of("event.code", "TAKEOVER", "event.step", "TF01", "event.reason", "BORED"))) {
            MockHttpServletResponse answer = tap(0, fields);
            assertThat(answer.getStatus()).as("%s", fields).isEqualTo(422);
            assertThat(JSON.readTree(answer.getContentAsByteArray())
                            .path("reasons")
                            .get(0)
                            .stringValue())
                    .as("%s", fields)
                    .isNotBlank()
                    .doesNotContain("{");
        }
        assertThat(read().lockVersion()).isZero();
    }

    static List<String> unreadable() {
        return List.of(
                "",
                "{",
                "[]",
                "null",
                "4",
                "\"tap\"",
                "{} {}",
                "{\"tap\":\"" + TAP + "\",\"version\":0}",
                "{\"tap\":\"" + TAP + "\",\"version\":\"0\",\"fields\":{}}",
                "{\"tap\":\"" + TAP + "\",\"version\":0.5,\"fields\":{}}",
                "{\"tap\":\"" + TAP + "\",\"version\":99999999999,\"fields\":{}}",
                "{\"tap\":\"no id\",\"version\":0,\"fields\":{}}",
                "{\"tap\":7,\"version\":0,\"fields\":{}}",
                "{\"tap\":\"" + TAP + "\",\"version\":0,\"fields\":[]}",
                "{\"tap\":\"" + TAP + "\",\"version\":0,\"fields\":{\"step.TF01\":4}}",
                "{\"tap\":\"" + TAP + "\",\"version\":0,\"fields\":{\"step.TF01\":null}}",
                "{\"tap\":\"" + TAP + "\",\"version\":0,\"version\":1,\"fields\":{}}",
                "{\"tap\":\"" + TAP + "\",\"version\":0,\"fields\":{\"strength\":\"" + "x".repeat(17_000) + "\"}}",
                "{\"a\":".repeat(3_000),
                "[".repeat(15_000));
    }

    @ParameterizedTest
    @MethodSource("unreadable")
    void whatIsNoTapIsABadRequestInJson(String body) throws Exception {
        MockHttpServletResponse answer = send(body);
        assertThat(answer.getStatus()).isEqualTo(400);
        assertThat(JSON.readTree(answer.getContentAsByteArray()).path("reasons").size())
                .isEqualTo(1);
        assertThat(read().lockVersion()).isZero();
    }

    @Test
    void bytesThatAreNoTextAreABadRequest() throws Exception {
        byte[] bytes = body(TAP, 0, Map.of("strength", "x?")).getBytes(StandardCharsets.UTF_8);
        bytes[new String(bytes, StandardCharsets.UTF_8).indexOf('?')] = (byte) 0xFF;
        assertThat(send(bytes, MediaType.APPLICATION_JSON_VALUE, "*/*").getStatus())
                .isEqualTo(400);
    }

    @Test
    void theAnswerIsJsonWhateverTheRequestCallsItself() throws Exception {
        byte[] body = body(TAP, 0, Map.of("step.TF01", "4")).getBytes(StandardCharsets.UTF_8);
        MockHttpServletResponse answer = send(body, MediaType.TEXT_PLAIN_VALUE, "text/html, image/png");
        assertThat(answer.getStatus()).isEqualTo(200);
        assertThat(answer.getContentType()).startsWith("application/json");
        assertThat(mockMvc.perform(post("/sheets/no-id/taps").with(csrf()).with(LogIn.as(theatre.supervisor())))
                        .andReturn()
                        .getResponse()
                        .getStatus())
                .isEqualTo(404);
    }

    @Test
    void aTapWithoutTheTokenIsRefused() throws Exception {
        assertThat(mockMvc.perform(post("/sheets/" + id + "/taps")
                                .content(body(TAP, 0, Map.of("step.TF01", "4")))
                                .with(LogIn.as(theatre.supervisor())))
                        .andReturn()
                        .getResponse()
                        .getStatus())
                .isEqualTo(403);
    }

    @Test
    void aTapWithATextThatMayNameAPatientIsAppliedOnceItIsSentAgain() throws Exception {
        session = mockMvc.perform(
                        post("/sheets/" + id).param("version", "0").with(csrf()).with(LogIn.as(theatre.supervisor())))
                .andReturn()
                .getResponse()
                .getCookies();
        String body = body(TAP, 0, Map.of("strength", "Mr Tarn, 12345678"));
        MockHttpServletResponse first = send(body);
        assertThat(first.getStatus()).isEqualTo(422);
        assertThat(JSON.readTree(first.getContentAsByteArray())
                        .path("reasons")
                        .get(0)
                        .stringValue())
                .endsWith("send it again as it is.");
        assertThat(read().strength()).isEmpty();
        JsonNode answer = ok(send(body));
        assertThat(answer.path("warnings").size()).isEqualTo(2);
        assertThat(ok(tap(1, Map.of("step.TF01", "4"))).path("warnings").size()).isZero();
    }

    private Sheet read() {
        return theatre.organisation().in(() -> sheets.get(id));
    }

    private static JsonNode ok(MockHttpServletResponse answer) {
        assertThat(answer.getStatus()).isEqualTo(200);
        return JSON.readTree(answer.getContentAsByteArray());
    }

    private MockHttpServletResponse tap(int version, Map<String, String> fields) throws Exception {
        return send(body(UUID.randomUUID().toString(), version, fields));
    }

    private static String body(String tap, int version, Map<String, String> fields) {
        return JSON.writeValueAsString(Map.of("tap", tap, "version", version, "fields", fields));
    }

    private MockHttpServletResponse send(String body) throws Exception {
        return send(body.getBytes(StandardCharsets.UTF_8), MediaType.APPLICATION_JSON_VALUE, "application/json");
    }

    private MockHttpServletResponse send(byte[] body, String type, String accept) throws Exception {
        var request = post("/sheets/" + id + "/taps");
        return mockMvc.perform((session.length == 0 ? request : request.cookie(session))
                        .content(body)
                        .contentType(type)
                        .header("Accept", accept)
                        .with(csrf())
                        .with(LogIn.as(theatre.supervisor())))
                .andReturn()
                .getResponse();
    }
}
