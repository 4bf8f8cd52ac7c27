package org.scrubline.casework.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.time.Instant;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.Sheets;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
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

/** What a device is given of a sheet, and what it is told the server has. */
@ScrublineTest
class DeviceTests {

    private static final JsonMapper JSON = JsonMapper.builder().build();
    private static final String TAP = "00000000-0000-4000-8000-000000000001";

    @Autowired
    MockMvc mockMvc;

    @Autowired
    SheetFixture fixture;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    Sheets sheets;

    Theatre theatre;
    UUID id;

    @BeforeEach
    void openASheet() {
        theatre = fixture.theatre(organisations);
        id = fixture.open(theatre, Procedures.TRAB_FORNIX, Instant.parse("2026-03-12T18:40:00Z"));
    }

    @Test
    void thePackageOfASheetHoldsItsCaseAndNobodysName() throws Exception {
        String json = body(theatre.supervisor(), "/sheets/" + id + "/package");
        JsonNode found = JSON.readTree(json);
        assertThat(found.path("scrubline").asString()).isEqualTo("package");
        assertThat(found.path("facts").path("steps").size()).isEqualTo(19);
        assertThat(found.path("caption").asString()).contains("OEI");
        assertThat(json)
                .doesNotContain(
                        "Hallinor", "Verrin", theatre.trainee().personId().toString());
    }

    @Test
    void thePageOfASheetForTheDeviceNamesTheTraineeByTheCase() throws Exception {
        String page = body(theatre.supervisor(), "/sheets/" + id + "/table");
        String main = page.substring(page.indexOf("<main"), page.indexOf("</main>"));
        assertThat(main)
                .contains("your trainee of", "data-sheet=\"" + id + "\"")
                .doesNotContain("Hallinor", "Verrin");
    }

    @Test
    void theShapeOfASheetOutlivesATap() throws Exception {
        String before = shape();
        tap(theatre.supervisor(), "");
        assertThat(shape()).isEqualTo(before);
    }

    @Test
    void theReceiptNamesEveryTapAndTheContentTheyMade() throws Exception {
        JsonNode before = JSON.readTree(body(theatre.supervisor(), "/sheets/" + id + "/receipt"));
        assertThat(before.path("taps").size()).isZero();
        tap(theatre.supervisor(), "");
        JsonNode after = JSON.readTree(body(theatre.supervisor(), "/sheets/" + id + "/receipt"));
        assertThat(after.path("taps").get(0).asString()).isEqualTo(TAP);
        assertThat(after.path("version").asInt()).isEqualTo(1);
        assertThat(after.path("hash").asString())
                .isNotEqualTo(before.path("hash").asString())
                .hasSize(64);
    }

    @Test
    void theListHoldsTheOpenSheetsOfThisPersonAlone() throws Exception {
        assertThat(body(theatre.supervisor(), "/at-the-table/sheets")).contains(id.toString());
        SignedIn other = theatre.organisation().join("Corisande Delmarr", Role.SUPERVISOR);
        assertThat(body(other, "/at-the-table/sheets"))
                .doesNotContain(id.toString())
                .contains("[]");
        assertThat(body(theatre.trainee(), "/at-the-table/sheets")).contains("[]");
    }

    @Test
    void nobodyElseGetsAnythingOfTheSheet() throws Exception {
        SignedIn other = theatre.organisation().join("Corisande Delmarr", Role.SUPERVISOR);
        for (String path : new String[] {"package", "table", "receipt"}) {
            for (SignedIn who : new SignedIn[] {other, theatre.trainee()}) {
                assertThat(response(who, "/sheets/" + id + "/" + path).getStatus())
                        .isEqualTo(404);
            }
        }
    }

    @Test
    void aTapMadeByAnotherPersonIsNotTakenInThisOnesSession() throws Exception {
        MockHttpServletResponse answer =
                tap(theatre.supervisor(), ",\"person\":\"" + theatre.trainee().personId() + "\"");
        assertThat(answer.getStatus()).isEqualTo(403);
        assertThat(answer.getContentAsString()).doesNotContain("scrubline");
        assertThat(theatre.organisation().in(() -> sheets.get(id)).lockVersion())
                .isZero();
        MockHttpServletResponse own = tap(
                theatre.supervisor(), ",\"person\":\"" + theatre.supervisor().personId() + "\"");
        assertThat(own.getStatus()).isEqualTo(200);
    }

    @Test
    void anAnswerCarriesItsMarkAndTheTapItAnswers() throws Exception {
        JsonNode answer = JSON.readTree(tap(theatre.supervisor(), "").getContentAsString());
        assertThat(answer.path("scrubline").asString()).isEqualTo("tap");
        assertThat(answer.path("tap").asString()).isEqualTo(TAP);
        assertThat(answer.path("sheet").path("steps").path("TF01").asString()).isEqualTo("4");
    }

    private String shape() throws Exception {
        return JSON.readTree(body(theatre.supervisor(), "/sheets/" + id + "/package"))
                .path("shape")
                .asString();
    }

    private MockHttpServletResponse tap(SignedIn who, String more) throws Exception {
        String body = "{\"tap\":\"" + TAP + "\",\"version\":0,\"fields\":{\"step.TF01\":\"4\"}" + more + "}";
        return mockMvc.perform(post("/sheets/" + id + "/taps")
                        .with(LogIn.as(who))
                        .with(csrf())
                        .contentType(MediaType.APPLICATION_JSON)
                        .content(body))
                .andReturn()
                .getResponse();
    }

    private String body(SignedIn who, String path) throws Exception {
        MockHttpServletResponse response = response(who, path);
        assertThat(response.getStatus()).isEqualTo(200);
        return response.getContentAsString();
    }

    private MockHttpServletResponse response(SignedIn who, String path) throws Exception {
        return mockMvc.perform(get(path).with(LogIn.as(who))).andReturn().getResponse();
    }
}
